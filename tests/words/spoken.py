"""The example specs drawn in a language: one of the catalogues, or one made up that marks every text it translates."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import cache
from gettext import NullTranslations
from pathlib import Path
from unittest import mock

from sld import run
from sld.sheet.sheet import Sheet
from sld.symbols.stroke import Text
from sld.words import Language

__all__ = ["MARKED", "SPECS", "drawn", "marked", "texts"]

SPECS = sorted((Path(__file__).resolve().parents[2] / "specs").glob("*.yaml"))

_MARKS = str.maketrans("abcdefghijklmnopqrstuvwxyz", "ãḅćḍẽḟģḥĩĵķĺṃñõṗʠŕşţũṽŵẋỹź")


def marked(text: str) -> str:
    """Return an English text of a catalogue with a mark on each small letter outside the places for values."""
    parts = text.replace("{{", "\0").replace("}}", "\1").split("{")
    head, *rest = parts
    fields = [part.split("}", 1) for part in rest]
    whole = head.translate(_MARKS) + "".join(f"{{{name}}}{after.translate(_MARKS)}" for name, after in fields)
    return whole.replace("\0", "{{").replace("\1", "}}")


class _Marking(NullTranslations):
    """A language of which every text is the English one with marks. said: what it was asked for."""

    def __init__(self) -> None:
        super().__init__()
        self.said: set[tuple[str, str]] = set()

    def gettext(self, message: str) -> str:
        self.said.add(("", message))
        return marked(message)

    def pgettext(self, context: str, message: str) -> str:
        self.said.add((context, message))
        return message if context.startswith("form of a date") else marked(message)

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        self.said.add(("", msgid1))
        return marked(msgid1 if n == 1 else msgid2)


_MARKING = _Marking()
MARKED = Language("xx", _MARKING)


@cache
def _checked(path: Path) -> run.Checked:
    return run.check(path)


def drawn(path: Path, spoken: Language, reader: str) -> tuple[Sheet, ...]:
    """Return the sheets of a spec in a language for a reader."""
    checked = _checked(path)
    project = checked.system.project.model_copy(update={"language": spoken.code})
    with mock.patch("sld.model.system.language", return_value=spoken):
        return run.draw(replace(checked, system=replace(checked.system, project=project)), reader=reader).sheets


def texts(sheets: Iterable[Sheet]) -> Iterator[str]:
    """Yield all that is printed on sheets, and said of them and of what is on them to whoever points at it."""
    for sheet in sheets:
        yield from (sheet.title, sheet.description)
        for group in sheet.groups:
            yield group.title
            yield from (stroke.text for stroke in group.strokes if isinstance(stroke, Text))
