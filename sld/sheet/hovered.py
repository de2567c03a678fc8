"""What a pointer resting on the parts of a plan says, in the words of a language."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from collections.abc import Sequence as Row

from sld.documents.document import Document
from sld.layout.plan import Plan
from sld.sheet.worded import plain
from sld.words import Language, Sayable, Sequence, Value, phrase

__all__ = ["hover_texts"]


def hover_texts(document: Document, plans: Row[Plan]) -> dict[str, str]:
    """Return the texts by key; a symbol that stands for several devices names the others."""
    say, told = document.language.say, document.hover
    by_line = _ByLine(document.language)
    found = {key: by_line.say(told[key]) for key in dict.fromkeys(_keys(plans)) if key in told}
    found |= {key: plain(say(told[key]), document.language) for key in told if key.startswith("flag-")}
    alike = {cell.key: cell.alike for plan in plans for cell in plan.cells if cell.alike}
    for key, others in alike.items():
        named = ", ".join(document.designations[each] for each in others)
        likewise = phrase("drawn once for {count}, likewise: {others}", count=1 + len(others), others=named)
        found[key] += f"\n{say(likewise)}"
    return found


class _ByLine:
    """Says what has several lines. One that is told of many devices, as the trace of a rating, is said once."""

    def __init__(self, language: Language) -> None:
        self._say = language.say
        self._known: dict[int, tuple[Sayable, str]] = {}  # by `id`, and what it is of, so that it stays

    def say(self, told: Sayable) -> str:
        if not isinstance(told, Sequence) or told.separator != "\n":
            return self._say(told)
        head, *others = told.parts
        return "\n".join(text for text in (self._line(head, keep=False), *map(self._line, others)) if text)

    def _line(self, part: Value, *, keep: bool = True) -> str:
        if isinstance(part, int):
            return str(part)
        if isinstance(part, str) or not keep:
            return self._say(part)
        if id(part) not in self._known:
            self._known[id(part)] = part, self._say(part)
        return self._known[id(part)][1]


def _keys(plans: Iterable[Plan]) -> Iterator[str]:
    """Yield the keys of all that a pointer can rest on."""
    for plan in plans:
        yield from (cell.key for cell in plan.cells)
        yield from (frame.key for frame in plan.frames)
        yield from (key for wire in plan.wires for key, _ in wire.ends)
