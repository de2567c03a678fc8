"""Documents bound into one: their sheets in a row, each with its page of all pages in the margin for filing."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from sld.frozen import dataclass, replace
from sld.sheet.compose import Composition
from sld.sheet.paper import BORDER_MM, LEFT_MARGIN_MM, MARGIN_MM
from sld.sheet.sheet import About, Chapter, Group, Sheet
from sld.symbols.stroke import Stroke, Text
from sld.symbols.typeface import text_width_mm
from sld.words import Language, phrase

__all__ = ["Bound", "bound", "section_pages"]

CAPTION_MM, NUMBER_MM = 1.8, 3.5
ABOVE_FOOT_MM = 2.0
"""How far above the lower edge of the frame the last line stands."""


@dataclass(frozen=True, slots=True)
class Bound:
    """The pages of a pack, what is where, and what its file says of itself."""

    sheets: tuple[Sheet, ...]
    chapters: tuple[Chapter, ...]
    about: About


def bound(documents: Mapping[str, Composition], language: Language, title: str) -> Bound:
    """Return the sheets of some documents, by their titles, in a row. title: of all of them."""
    total = sum(len(each.sheets) for each in documents.values())
    sheets: list[Sheet] = []
    chapters = []
    for called, made in documents.items():
        chapters.append(Chapter(called, len(sheets) + 1, len(made.sheets)))
        sheets += [_paged(sheet, len(sheets) + n, total, language) for n, sheet in enumerate(made.sheets, 1)]
    about = next(iter(documents.values())).about
    return Bound(tuple(sheets), tuple(chapters), replace(about, title=title))


def section_pages(made: Composition, first_page: int) -> dict[str, int]:
    """Return the page on which each section of a document begins. first_page: of the document."""
    found: dict[str, int] = {}
    for page, sheet in enumerate(made.sheets, first_page):
        for group in sheet.groups:
            if group.section:
                found.setdefault(group.section, page)
    return found


def _paged(sheet: Sheet, page: int, total: int, language: Language) -> Sheet:
    """Return a sheet with its page number left of the lower corner of its frame, where nothing else is printed."""
    say, foot = language.say, sheet.height_mm - MARGIN_MM - ABOVE_FOOT_MM
    lines = (
        (say(phrase("Page")), CAPTION_MM, foot - 7.5),
        (str(page), NUMBER_MM, foot - 2.9),
        (say(phrase("of {count}", count=total)), CAPTION_MM, foot),
    )
    group = Group("page", "frame", tuple(_middled(lines)))
    return replace(sheet, groups=(*sheet.groups, group))


def _middled(lines: Sequence[tuple[str, float, float]]) -> list[Stroke]:
    middle = (LEFT_MARGIN_MM - BORDER_MM) / 2  # the grid reference stands beside the frame
    return [Text((middle - text_width_mm(text, height) / 2, y), text, height) for text, height, y in lines]
