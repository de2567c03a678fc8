"""Where the texts of flags are, on a sheet of the diagram that has flags and no list of what they mean."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sld.sheet.first_sheet import stem
from sld.sheet.flow import Dealt
from sld.sheet.listings.flag import FINDINGS
from sld.sheet.placement import INSET_MM
from sld.sheet.sheet import Group
from sld.symbols.stroke import Text
from sld.symbols.typeface import printable, text_width_mm
from sld.words import Language, phrase

__all__ = ["pointer"]

_LISTS = (FINDINGS, "accepted")


def pointer(
    groups: Sequence[Group], heading: Group, dealt: Sequence[Sequence[Dealt]], number: int, language: Language
) -> Iterator[Group]:
    """Yield the line behind a heading that names the sheets with the lists, where the flags of a sheet need it.

    groups: of the sheet. dealt: the listings of all sheets. number: of the sheet.
    """
    listed = [n for n, tables in enumerate(dealt, 1) if any(stem(each.section) in _LISTS for each in tables)]
    if not listed or listed == [number] or not any(group.key.startswith("flag-") for group in groups):
        return
    first, last = listed[0], listed[-1]
    said = phrase("{findings}; see sheet {number}", findings=phrase("Findings"), number=first)
    if first < last:
        said = phrase("{findings}; see sheets {first} to {last}", findings=phrase("Findings"), first=first, last=last)
    (title,) = (stroke for stroke in heading.strokes if isinstance(stroke, Text))
    at = (title.at[0] + text_width_mm(title.text, title.height_mm) + INSET_MM, title.at[1])
    yield Group(f"pointer-{number}", "label", (Text(at, printable(language.say(said))),))
