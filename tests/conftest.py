"""Options of the test run."""

from __future__ import annotations

import os
import pkgutil
from collections.abc import Iterator
from importlib import import_module

import pytest
from hypothesis import HealthCheck, settings

import patternforge

# The laws draw the same cases in every run, so that one checkout gives one result; LAWS=roaming draws new ones.
_UNHURRIED = (HealthCheck.too_slow, HealthCheck.filter_too_much)
settings.register_profile("steady", derandomize=True, deadline=None, suppress_health_check=_UNHURRIED)
settings.register_profile("roaming", deadline=None, suppress_health_check=_UNHURRIED)
settings.load_profile(os.environ.get("LAWS", "steady"))


def pytest_addoption(parser: pytest.Parser) -> None:
    """``--renew-goldens``: write the golden drawings anew instead of comparing with them."""
    parser.addoption("--renew-goldens", action="store_true", help="write the golden drawings of tests/golden anew")


def package_modules() -> Iterator[str]:
    """The names of all modules of the package but those that are run as programs."""
    found = pkgutil.walk_packages(patternforge.__path__, f"{patternforge.__name__}.")
    return (module.name for module in found if not module.name.endswith(".__main__"))


def pytest_collection_finish(session: pytest.Session) -> None:
    """Loads the whole package before a law is run.

    Hypothesis mixes the constants of all loaded modules that are neither installed nor tests into what it draws, so
    that a law would draw other cases alone than after tests that load more of the package.
    """
    if any(item.get_closest_marker("hypothesis") for item in session.items):
        for name in package_modules():
            import_module(name)
