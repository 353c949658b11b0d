"""The laws draw the same cases whichever tests run with them."""

from __future__ import annotations

import sys

from hypothesis import given
from hypothesis import strategies as st

from tests.conftest import package_modules


@given(st.none())
def test_no_module_is_loaded_after_a_law_has_begun_to_draw(nothing: None) -> None:
    assert nothing is None
    names = set(package_modules())
    assert "patternforge.export.pdf" in names
    assert names - sys.modules.keys() == set()
