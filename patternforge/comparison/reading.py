"""``pattern.json`` read back: the pieces as they were made, and what they were drafted from."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from patternforge.comparison.located import Located, located_json
from patternforge.comparison.made import MadeHole, MadePiece, MadeSet
from patternforge.drafting.description import FORMAT, VERSION
from patternforge.drafting.source import Source
from patternforge.errors import GeometryError, ReadingError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, from_vertices
from patternforge.geometry.point import Point
from patternforge.geometry.transform import rotation

__all__ = ["Stored", "TakenLeather", "stored"]


@dataclass(frozen=True, slots=True)
class TakenLeather:
    """A leather that pieces were drafted or kept for: its role and what of it bears on how they close."""

    role: str
    thickness: float
    neutral: float
    min_radius: float


@dataclass(frozen=True, slots=True)
class Stored:
    """A ``pattern.json``: its pieces, what they were drafted from, and the design's file name without folders.

    ``kept_for``: leathers that the pieces were kept for, empty where it is those they were drafted for.
    """

    made: MadeSet
    source: Source | None
    file: str
    drafted_for: tuple[TakenLeather, ...]
    kept_for: tuple[TakenLeather, ...]


def stored(data: bytes, file: str, label: str = "") -> Stored:
    """The ``pattern.json`` in ``data``; ``file`` names it in messages, ``label`` in reports.

    ReadingError, one line that says where and what: not JSON, cut short, another file, another version, damaged.
    """
    root = located_json(data, file)
    if not isinstance(root.value, dict) or root.value.get("format") != FORMAT:
        raise ReadingError(f"{file}: this is no pattern.json of this program; give the file that 'draft' wrote")
    version = root["version"].count
    if version != VERSION:
        advice = "use the program that wrote it, or write it anew with 'draft'"
        raise ReadingError(f"{file}: the file has version {version}; this program reads version {VERSION}; {advice}")
    return Stored(
        made=_made(root, label or file),
        source=_source(root["source"]),
        file=root["design"]["file"].text,
        drafted_for=tuple(_taken(each) for each in root["inputs"]["leathers"]),
        kept_for=_kept(root),
    )


def _made(root: Located, label: str) -> MadeSet:
    pieces = tuple(_piece(each, root) for each in root["pieces"])
    if not pieces:
        root["pieces"].refuse("a list of pieces")
    leathers = tuple((each["role"].text, each["drafted_thickness"].number) for each in root["inputs"]["leathers"])
    _refuse_mixed_up(root["pieces"], {role for role, _ in leathers})
    return MadeSet(
        label=label,
        name=root["design"]["name"].text,
        title=root["design"]["title"].text,
        pieces=pieces,
        leathers=leathers,
        thread=sum(seam["thread"].number for seam in root["seams"]),
        closed=_closed(root),
    )


def _refuse_mixed_up(pieces: Located, roles: set[str]) -> None:
    """Pieces are told apart by their names and cut from the leathers of the design: nothing else can be compared."""
    names: set[str] = set()
    for each in pieces:
        name = each["name"].text
        if not name or name in names:
            each["name"].refuse("a name that no other piece has")
        names.add(name)
        if each["leather"].text not in roles:
            each["leather"].refuse("a leather of the design")
        if each["thickness"].number <= 0:
            each["thickness"].refuse("a thickness above 0")


def _closed(root: Located) -> float | None:
    for each in root["findings"]:
        if (each["what"].text, each["where"].text) == ("thickness closed, as loaded", "whole wallet"):
            return each["measured"].number
    return None


def _source(told: Located) -> Source | None:
    if told.is_null:
        return None
    return Source(told["text"].text, told["settings"].texts, told["initials"].texts)


def _kept(root: Located) -> tuple[TakenLeather, ...]:
    told = root["kept_for"]
    return () if told.is_null else tuple(_taken(each) for each in told)


def _taken(told: Located) -> TakenLeather:
    thickness = told["drafted_thickness"].number
    return TakenLeather(told["role"].text, thickness, told["neutral"].number, told["min_radius"].number)


def _piece(told: Located, root: Located) -> MadePiece:
    part = told["part"].text
    return MadePiece(
        name=told["name"].text,
        leather=told["leather"].text,
        thickness=told["thickness"].number,
        quantity=told["quantity"].count,
        outline=_path(told["outline"], closed=True),
        openings=tuple(_path(each, closed=True) for each in told["openings"]),
        holes=(*_holes(told["holes"], turned=False), *_holes(told["turned_holes"], turned=True)),
        drawn=tuple(_drawn(told)),
        folds=tuple(_folds(part, root)),
    )


def _drawn(told: Located) -> Iterator[tuple[str, Path]]:
    for line in told["fold_lines"]:
        yield "fold line", _path(line, closed=False)
    for mark in told["marks"]:
        yield f"mark '{mark['name'].text}'", _path(mark["path"], closed=mark["closed"].flag)
    for letters in told["inscriptions"]:
        yield f"letters '{letters['initials'].text}'", _box(letters)


def _box(letters: Located) -> Path:
    """The box of letters where it lies; its lowest corner comes first whatever way is up."""
    middle = Point(letters["x"].number, letters["y"].number)
    across, upright = letters["width"].number / 2, letters["height"].number / 2
    try:
        box = rounded_rectangle(middle.x - across, middle.y - upright, middle.x + across, middle.y + upright, 0.0)
    except GeometryError:
        letters["width"].refuse("the width of a box")
    return rotation(letters["up"].number - 90.0, middle).path(box)


def _folds(part: str, root: Located) -> Iterator[tuple[int, float]]:
    for fold in root["folds"]:
        for layer in fold["layers"]:
            if layer["part"].text == part:
                yield fold["number"].count, layer["flat_length"].number
    if not root["folded"].is_null:
        yield from ((hinge["number"].count, hinge["flat_length"].number) for hinge in root["folded"]["hinges"])


def _holes(told: Located, *, turned: bool) -> Iterator[MadeHole]:
    for each in told:
        at = Point(each["x"].number, each["y"].number)
        yield MadeHole(
            each["seam"].text, each["index"].count, turned, at, each["direction"].number, each["shape"].text
        )


def _path(told: Located, *, closed: bool) -> Path:
    vertices = [each.numbers(3) for each in told]
    try:
        return from_vertices([(x, y, bulge) for x, y, bulge in vertices], closed)
    except GeometryError as error:
        raise ReadingError(
            f"{told.file}: {told.place} is no line: {error}; write the file anew with 'draft'"
        ) from error
