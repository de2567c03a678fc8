"""What a pointer resting on the parts of a plan says, in the words of a language."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from sld.documents.document import Document
from sld.layout.plan import Plan
from sld.sheet.worded import plain
from sld.words import phrase

__all__ = ["hover_texts"]


def hover_texts(document: Document, plans: Sequence[Plan]) -> dict[str, str]:
    """Return the texts by key; a symbol that stands for several devices names the others."""
    say, told = document.language.say, document.hover
    found = {key: say(told[key]) for key in dict.fromkeys(_keys(plans)) if key in told}
    found |= {key: plain(say(told[key]), document.language) for key in told if key.startswith("flag-")}
    alike = {cell.key: cell.alike for plan in plans for cell in plan.cells if cell.alike}
    for key, others in alike.items():
        named = ", ".join(document.designations[each] for each in others)
        likewise = phrase("drawn once for {count}, likewise: {others}", count=1 + len(others), others=named)
        found[key] += f"\n{say(likewise)}"
    return found


def _keys(plans: Iterable[Plan]) -> Iterator[str]:
    """Yield the keys of all that a pointer can rest on."""
    for plan in plans:
        yield from (cell.key for cell in plan.cells)
        yield from (frame.key for frame in plan.frames)
        yield from (key for wire in plan.wires for key, _ in wire.ends)
