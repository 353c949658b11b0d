"""Options of the test run."""

from __future__ import annotations

import os

import pytest
from hypothesis import HealthCheck, settings

# The laws draw the same cases in every run, so that one checkout gives one result; LAWS=roaming draws new ones.
_UNHURRIED = (HealthCheck.too_slow, HealthCheck.filter_too_much)
settings.register_profile("steady", derandomize=True, deadline=None, suppress_health_check=_UNHURRIED)
settings.register_profile("roaming", deadline=None, suppress_health_check=_UNHURRIED)
settings.load_profile(os.environ.get("LAWS", "steady"))


def pytest_addoption(parser: pytest.Parser) -> None:
    """``--renew-goldens``: write the golden drawings anew instead of comparing with them."""
    parser.addoption("--renew-goldens", action="store_true", help="write the golden drawings of tests/golden anew")
