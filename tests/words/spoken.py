"""The example specs drawn in a language: one of the catalogues, or one made up that marks every text it translates."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from gettext import NullTranslations
from pathlib import Path
from typing import Literal, get_args, get_origin
from unittest import mock

from example_specs import SPECS, checked

from sld import run
from sld.grid.asked import Paper, Point
from sld.grid.outcome import Outcome
from sld.grid.quantity import Quantity
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.sheet.sheet import Sheet
from sld.spec.blocks.block import Block
from sld.symbols.stroke import Text
from sld.tables.profiles import PROFILE_NAMES
from sld.words import Language

__all__ = ["MARKED", "SPECS", "checked", "drawn", "english", "marked", "names_of", "names_of_grid", "texts"]

_MARKS = str.maketrans("abcdefghijklmnopqrstuvwxyz", "ãḅćḍẽḟģḥĩĵķĺṃñõṗʠŕşţũṽŵẋỹź")


def marked(text: str) -> str:
    """Return an English text of a catalogue with a mark on each small letter outside the places for values."""
    parts = text.replace("{{", "\0").replace("}}", "\1").split("{")
    head, *rest = parts
    fields = [part.split("}", 1) for part in rest]
    whole = head.translate(_MARKS) + "".join(f"{{{name}}}{after.translate(_MARKS)}" for name, after in fields)
    return whole.replace("\0", "{{").replace("\1", "}}")


class _Marking(NullTranslations):
    """A language of which every text is the English one with marks."""

    def gettext(self, message: str) -> str:
        return marked(message)

    def pgettext(self, context: str, message: str) -> str:
        return message if context.startswith("form of a date") else marked(message)

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return marked(msgid1 if n == 1 else msgid2)


MARKED = Language("xx", _Marking())


def drawn(path: Path, spoken: Language, reader: str) -> tuple[Sheet, ...]:
    """Return the sheets of all documents of a spec that a reader gets, in a language.

    The calculation for the full reader only: it is the same for all who get it, see `tests/house/test_house_cells.py`.
    """
    found = checked(path)
    names = [each for each in run.made_for(reader) if reader == "full" or each != "calculation"]
    project = found.project.model_copy(update={"language": spoken.code})
    with mock.patch("sld.model.system.language", return_value=spoken):
        parts = tuple(part._replace(system=replace(part.system, project=project)) for part in found.parts)
        made = run.documents(replace(found, parts=parts), names, reader=reader)
    return tuple(sheet for document in made.values() for sheet in document.sheets)


def texts(sheets: Iterable[Sheet]) -> Iterator[str]:
    """Yield all that is printed on sheets, and said of them and of what is on them to whoever points at it."""
    for sheet in sheets:
        yield from (sheet.title, sheet.description)
        for group in sheet.groups:
            yield group.title
            yield from (stroke.text for stroke in group.strokes if isinstance(stroke, Text))


def names_of(data: object) -> Iterator[str]:
    """Yield what the author of a spec chose freely: texts that are no word of the spec language, and names as keys."""
    if isinstance(data, Mapping):
        for key, value in data.items():
            if key not in _KEYS:
                yield str(key).replace("_", " ")
            yield from names_of(value)
    elif isinstance(data, list | tuple):
        for value in data:
            yield from names_of(value)
    elif isinstance(data, str) and data not in _CHOICES:
        yield data


def names_of_grid(system: System) -> Iterator[str]:
    """Yield what the grid rules of a system call by its name: books, clauses, forms, publishers, addresses."""
    yield from _texts_of(system.grid_rules.model_dump(mode="json"))


def _texts_of(data: object) -> Iterator[str]:
    if isinstance(data, dict):
        for key, value in data.items():
            yield from _texts_of(value if key not in ("name", "source", "sources", "mark") else None)
    elif isinstance(data, list | tuple):
        for value in data:
            yield from _texts_of(value)
    elif isinstance(data, str) and data not in _GRID_WORDS:
        yield data


def _blocks(block: type[Block] = Block) -> Iterator[type[Block]]:
    yield block
    for below in block.__subclasses__():
        yield from _blocks(below)


def _choices(annotation: object) -> Iterator[str]:
    if get_origin(annotation) is Literal:
        yield from (word for word in get_args(annotation) if isinstance(word, str))
    else:
        for part in get_args(annotation):
            yield from _choices(part)


_FIELDS = [(name, field) for block in _blocks() for name, field in block.model_fields.items()]
_KEYS = {name for name, _ in _FIELDS} | {field.alias for _, field in _FIELDS if field.alias}
_CHOICES = {word for _, field in _FIELDS for word in _choices(field.annotation)} | set(PROFILE_NAMES)


_GRID_WORDS = {word.value for words in (Outcome, Quantity, Paper, Point) for word in words} | {"as published"}

WORD = re.compile(r"[^\W\d_]+")
THE_SAME = {
    # functions and letter symbols of formulas
    "max", "min", "cos", "sin", "cosφ", "sinφ", "Tmin", "Pmax", "Smax", "Ifed", "others", "Ibackfeed", "Ibus", "Imain",
    "Lshared", "Umin", "Umax", "down", "kgroup", "Cmin", "cmin", "cmax", "Zloop", "Parray", "Usys", "floor", "ceil",
    "exp",
    # units and proper names
    "bit", "kvar", "Ethernet", "Modbus", "Soto", "Klein", "Beckman", "Solar", "Energy",
} | {word for symbol in Symbol for word in WORD.findall(str(symbol))}  # fmt: skip
"""Words that are the same in every language."""

TITLES = re.compile("On-Site Guide")
"""Titles of publications, which no language translates; their words alone it would."""


def english(said: Iterable[str], names: Iterable[str]) -> dict[str, str]:
    """Return the words of texts that are neither marked nor names, each with the first line that holds it."""
    known = THE_SAME | {word for name in names for word in WORD.findall(name)}
    found: dict[str, str] = {}
    for line in sorted({line for text in said for line in text.split("\n")}):
        for word in WORD.findall(TITLES.sub("", line)):
            if re.search("[a-z]{3}", word) and word not in known:
                found.setdefault(word, line)
    return found
