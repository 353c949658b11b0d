"""Options of the test run."""

from __future__ import annotations

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    """``--renew-goldens``: write the golden drawings anew instead of comparing with them."""
    parser.addoption("--renew-goldens", action="store_true", help="write the golden drawings of tests/golden anew")
