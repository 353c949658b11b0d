"""The questions of ``new``: each with the ready design's own answer, which a bare Enter takes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

import typer

from patternforge.cli.start import Wish
from patternforge.cli.table import columns
from patternforge.drafting.names import file_word
from patternforge.errors import DesignError
from patternforge.pipeline.ready import Ready, ready_design, ready_names
from patternforge.units import mm
from patternforge.wallet.spec import Design, Parameter

__all__ = ["answered"]


def answered() -> Wish:
    """What the person at the keyboard wishes for."""
    ready = _ready()
    design = ready.resolved()
    title = typer.prompt("What is your wallet called?", default=design.title)
    settings = dict(_settings(ready, design))
    path = typer.prompt("Write it to which file?", default=f"{file_word(title)}.yaml")
    return Wish(ready.name, title, settings, Path(path))


def _ready() -> Ready:
    designs = [ready_design(name) for name in ready_names()]
    rows = [(f"{number})", ready.name, ready.resolved().title) for number, ready in enumerate(designs, start=1)]
    print("\n".join(["Which wallet is nearest to yours?", *columns(rows)]))
    while True:
        word = typer.prompt("Its number or name").strip()
        for number, ready in enumerate(designs, start=1):
            if word in (str(number), ready.name):
                return ready
        print(f"'{word}' is not among them.")


def _settings(ready: Ready, design: Design) -> Iterator[tuple[str, str]]:
    """Thickness of each leather, then every parameter; only what differs from the ready design."""
    for leather in design.leathers:
        question = f"How thick is the {leather.role} leather (mm or oz)?"
        yield from _answer(ready, leather.role, question, f"{leather.t:g} mm")
    for parameter in design.parameters:
        yield from _answer(ready, parameter.name, _question(parameter), _value(parameter))


def _answer(ready: Ready, name: str, question: str, default: str) -> Iterator[tuple[str, str]]:
    """The answer under its name, asked for until the design takes it; nothing for a bare Enter."""
    while True:
        answer = typer.prompt(question, default=default).strip()
        if answer == default:
            return
        try:
            ready.resolved({name: answer})
        except DesignError as error:
            print("\n".join(f"  {fault.what}; {fault.remedy}" for fault in error.faults))
        else:
            yield name, answer
            return


def _question(parameter: Parameter) -> str:
    ends = [f"{word} {_size(end, parameter)}" for word, end in _range(parameter).items()]
    meaning = parameter.meaning or parameter.name
    return f"{meaning[:1].upper()}{meaning[1:]} ({', '.join((parameter.name, *ends))})"


def _range(parameter: Parameter) -> Mapping[str, float]:
    ends = {"from": parameter.low, "to": parameter.high}
    return {word: end for word, end in ends.items() if end is not None}


def _value(parameter: Parameter) -> str:
    return _size(parameter.value, parameter)


def _size(value: float, parameter: Parameter) -> str:
    number = mm(value, 3).rstrip("0").rstrip(".")
    return f"{number} {parameter.unit}".rstrip()
