from __future__ import annotations

import subprocess
import sys

import pytest

from patternforge.errors import DeliveryError
from patternforge.export.registry import WRITERS, writer


@pytest.mark.parametrize("kind", WRITERS)
def test_every_kind_of_the_registry_has_a_writer_in_a_module_of_its_own(kind: str) -> None:
    function = writer(kind)
    assert f"{function.__module__}:{function.__name__}" == WRITERS[kind]


def test_an_unknown_kind_is_refused_with_the_nearest_known_one() -> None:
    with pytest.raises(DeliveryError, match=r"'dfx'.*dxf, hpgl, svg.*did you mean 'dxf'"):
        writer("dfx")


def test_naming_the_writers_loads_no_drawing_library() -> None:
    code = (
        "import sys; from patternforge.export.registry import writer; writer('dxf'); writer('svg'); writer('hpgl');"
        "print(sorted({'ezdxf', 'svgwrite', 'pikepdf', 'shapely', 'numpy'} & set(sys.modules)))"
    )
    answer = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert answer.stdout == "[]\n"
