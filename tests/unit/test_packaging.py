"""What is installed is what lies here."""

from __future__ import annotations

import tomllib
from pathlib import Path

ROOT = Path(__file__).parents[2]


def test_every_package_is_installed_and_the_ready_designs_with_them() -> None:
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"]["setuptools"]
    made = (path.parent.relative_to(ROOT) for path in (ROOT / "patternforge").rglob("__init__.py"))
    packages = {".".join(path.parts) for path in made}
    assert set(settings["packages"]) == packages | {"patternforge.ready"}
    assert settings["package-dir"] == {"patternforge.ready": "designs"}


def test_every_file_that_is_no_module_is_installed() -> None:
    data = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"]["setuptools"]["package-data"]
    folder = {name: ROOT / Path(*name.split(".")) for name in data} | {"patternforge.ready": ROOT / "designs"}
    installed = {path for name, globs in data.items() for glob in globs for path in folder[name].glob(glob)}
    plain = {path for path in (ROOT / "patternforge").rglob("*.*") if path.suffix not in (".py", ".pyc")}
    assert installed == plain | set((ROOT / "designs").glob("*.yaml"))
