"""The title block in the lower right corner, after ISO 7200:2004, and the table of earlier revisions above it.

The mandatory fields and the width of 180 mm are as the published summaries of ISO 7200 give them; the inner arrangement
is our own. The newest revision stands in the lowest row. The block grows in height where long values need a second
line; what still does not fit is cut visibly.
"""

from __future__ import annotations

from collections.abc import Sequence

from sld.documents.title import Revision, TitleBlock
from sld.frozen import dataclass, replace
from sld.sheet.lettering import fitted, shortened
from sld.symbols.stroke import Box, Polyline, Stroke, Text
from sld.symbols.typeface import PITCH, SLACK_MM, ascent_mm, descent_mm, text_width_mm
from sld.words import Language, Phrase, counted, phrase, sequence

__all__ = [
    "WIDTH_MM",
    "logo_box",
    "title_block_height_mm",
    "title_block_strokes",
    "title_strip_height_mm",
    "title_strip_strokes",
]

WIDTH_MM = 180.0
CAPTION_MM = 1.8
VALUE_MM = 2.5
TITLE_MM = 3.5
NUMBER_MM = 5.0
INSET_MM = 1.2
ACCENT_MM = 0.2
"""What a caption under a thick line is lowered by, so that marks on capital letters (Ä) stay clear of the line."""
HEADING_ROW_MM = 3.6
LOGO_MM = (50.0, 16.0)
"""Width and height of the field that is kept for a logo."""

STAMP_MM = 40.0
"""Height of the box that is kept for a reviewer's stamp: common stamps are up to about 70 × 35 mm."""

_MOST_SHEETS_COUNT = 199
"""The strip has room for the numbers of so many sheets on one line."""

EARLIER_SHOWN_COUNT = 5
REVISION_COLUMNS = (
    (phrase("Rev."), 14.0),
    (phrase("Change"), 86.0),
    (phrase("Date"), 24.0),
    (phrase("Drawn"), 28.0),
    (phrase("Checked"), 28.0),
)


@dataclass(frozen=True, slots=True)
class _Cell:
    """A field: its width, caption and value, the letter heights to try in turn, and how many lines it may take.

    In letters larger than the smallest it takes two lines at most. wraps_last: smaller letters are preferred to a
    second line, as for a number that is to be read in one. least_mm: the height kept free for what is no text.
    """

    width_mm: float
    caption: str
    value: str
    heights_mm: tuple[float, ...] = (VALUE_MM,)
    lines_count: int = 4
    wraps_last: bool = False
    least_mm: float = 0.0

    def lettering(self) -> tuple[tuple[str, ...], float]:
        """Return the lines and their height: one line in the largest letters that fit, else wrapped, then smaller."""
        room = self.width_mm - 2 * INSET_MM
        for height in self.heights_mm if self.wraps_last else ():
            line = shortened(self.value, room, height)
            if not line.endswith("…"):
                return (line,), height
        for height in self.heights_mm[:-1]:
            lines = fitted(self.value, room, height, 2)
            if not lines[-1].endswith("…"):
                return lines, height
        height = self.heights_mm[-1]
        return fitted(self.value, room, height, self.lines_count), height

    def line_mm(self) -> float:
        """Return the width of the field with its value on one line, an empty one as wide as it is."""
        if not self.value:
            return self.width_mm
        lines = (text_width_mm(self.caption, CAPTION_MM), text_width_mm(self.value, self.heights_mm[0]))
        return max(lines) + 2 * (INSET_MM + SLACK_MM)

    def needed_mm(self) -> float:
        """Return the height the field needs."""
        if self.least_mm:
            return self.least_mm
        lines, height = self.lettering()
        return _first_baseline_mm(height) + (len(lines) - 1) * PITCH * height + descent_mm(height) + 0.7

    def strokes(self, left_mm: float, top_mm: float) -> list[Stroke]:
        """Return caption and value for a field whose upper left corner is given."""
        lines, height = self.lettering()
        x, y = left_mm + INSET_MM, top_mm + _first_baseline_mm(height)
        caption = Text((x, top_mm + 0.8 + CAPTION_MM), self.caption, CAPTION_MM)
        drawn: list[Stroke] = [caption] if self.caption else []
        drawn += [Text((x, y + n * PITCH * height), line, height) for n, line in enumerate(lines) if line]
        return drawn


def _first_baseline_mm(height_mm: float) -> float:
    """Return how far below a field's upper edge the first line of its value stands, clear of the caption."""
    return 0.8 + CAPTION_MM + descent_mm(CAPTION_MM) + 0.1 + ascent_mm(height_mm)


def _rows(block: TitleBlock, number: int, count: int, paper: str) -> list[list[_Cell]]:
    """Return the fields row by row from the top, each row 180 mm wide."""
    say = block.language.say
    logo_mm, least_mm = LOGO_MM if block.logo else (0.0, 0.0)
    number_mm = (NUMBER_MM, TITLE_MM, VALUE_MM)
    second_mm = 45 if block.supplementary_title else 25
    return [
        [
            *([_Cell(logo_mm, "", "", least_mm=least_mm)] if block.logo else ()),
            _Cell(52 - logo_mm * 0.3, say(phrase("Legal owner")), block.legal_owner),
            _Cell(34 - logo_mm * 0.2, say(phrase("Creator")), block.creator),
            _Cell(30 - logo_mm * 0.15, say(phrase("Approval person")), block.approval_person),
            _Cell(36 - logo_mm * 0.2, say(phrase("Document type")), say(block.document_type)),
            _Cell(28 - logo_mm * 0.15, say(phrase("Status")), block.status),
        ],
        [
            *_shared(
                _Cell(112 - second_mm, say(phrase("Title")), block.title, (TITLE_MM, VALUE_MM), 5),
                _Cell(second_mm, say(phrase("Supplementary title")), block.supplementary_title),
            ),
            _Cell(68, say(phrase("Identification number")), block.identification_number, number_mm, wraps_last=True),
        ],
        _shared(
            _Cell(44, say(phrase("Site")), block.site),
            _Cell(40, say(phrase("Customer")), block.customer),
            _Cell(40, say(phrase("Rule profile")), say(block.rule_profile)),
            _Cell(56, say(phrase("Findings")), say(block.findings)),
        ),
        [
            *_issue(block),
            _Cell(14, say(phrase("Language")), block.language.code),
            _Cell(29, say(phrase("Paper size")), paper),
            _Cell(22, say(phrase("Sheet")), say(_numbered(number, count))),
        ],
    ]


def _issue(block: TitleBlock) -> list[_Cell]:
    """Return the fields of the newest revision; its own date where the drawing was issued on another one."""
    say = block.language.say
    newest = block.revisions[-1] if block.revisions else Revision(block.revision_index, "", block.date_of_issue)
    day, issued = say(newest.date), say(block.date_of_issue)
    own_mm = 22 if day != issued else 0
    return _shared(
        _Cell(14, say(phrase("Rev.")), block.revision_index),
        _Cell(44 - own_mm, say(phrase("Change")), newest.change, lines_count=6),
        *([_Cell(own_mm, say(phrase("Date")), day)] if own_mm else ()),
        _Cell(23, say(phrase("Date of issue")), issued),
        _Cell(17, say(phrase("Drawn")), newest.drawn),
        _Cell(17, say(phrase("Checked")), newest.checked),
    )


def _shared(*cells: _Cell) -> list[_Cell]:
    """Return the fields, as wide together as before: what some can spare is given to those too narrow for one line."""
    lacking_mm = [max(0.0, cell.line_mm() - cell.width_mm) for cell in cells]
    spare_mm = [max(0.0, cell.width_mm - cell.line_mm()) for cell in cells]
    given_mm = min(sum(lacking_mm), sum(spare_mm))
    if not given_mm:
        return list(cells)
    grown, shrunk = given_mm / sum(lacking_mm), given_mm / sum(spare_mm)
    return [
        replace(cell, width_mm=cell.width_mm + lacking * grown - spare * shrunk)
        for cell, lacking, spare in zip(cells, lacking_mm, spare_mm, strict=True)
    ]


def _strip(block: TitleBlock, number: int, count: int) -> list[_Cell]:
    """Return the fields of the strip on sheets after the first: what each is a sheet of, whose, and which."""
    say = block.language.say
    name = say(sequence([block.title, block.document_type]))
    longest = _Cell(0, "", say(_numbered(_MOST_SHEETS_COUNT, _MOST_SHEETS_COUNT)))
    number_mm = longest.line_mm()  # of any number, so that the strip is as high on each sheet
    others_mm = WIDTH_MM - number_mm
    return [
        *_shared(
            _Cell(others_mm - 105, say(phrase("Title")), name, lines_count=2),
            _Cell(37, say(phrase("Legal owner")), block.legal_owner, lines_count=2),
            _Cell(34, say(phrase("Identification number")), block.identification_number, lines_count=2),
            _Cell(22, say(phrase("Date of issue")), say(block.date_of_issue)),
            _Cell(12, say(phrase("Rev.")), block.revision_index),
        ),
        _Cell(number_mm, say(phrase("Sheet")), say(_numbered(number, count))),
    ]


def _numbered(number: int, count: int) -> Phrase:
    return phrase("{number} of {count}", number=number, count=count)


def title_strip_height_mm(block: TitleBlock) -> float:
    """Return the height of the strip that stands on further sheets in the place of the title block."""
    return max(cell.needed_mm() for cell in _strip(block, 1, 1)) + ACCENT_MM


def title_strip_strokes(block: TitleBlock, corner: Box, number: int, count: int) -> tuple[Stroke, ...]:
    """Return the strokes of the strip. corner, number, count: as of `title_block_strokes`."""
    left, right, bottom = corner.right_mm - WIDTH_MM, corner.right_mm, corner.bottom_mm
    top = bottom - title_strip_height_mm(block)
    drawn: list[Stroke] = [Polyline(((left, bottom), (left, top), (right, top)), 0.7)]
    return (*drawn, *_row_strokes(_strip(block, number, count), left, top + ACCENT_MM, bottom - top - ACCENT_MM))


def _row_strokes(row: Sequence[_Cell], left_mm: float, top_mm: float, height_mm: float) -> list[Stroke]:
    """Return the fields of a row side by side, with a line between each two."""
    drawn: list[Stroke] = []
    x = left_mm
    for cell in row:
        drawn += cell.strokes(x, top_mm)
        x += cell.width_mm
        if x < left_mm + WIDTH_MM - 0.1:
            drawn.append(Polyline(((x, top_mm), (x, top_mm + height_mm)), 0.25))
    return drawn


def _revision_rows(revisions: Sequence[Revision], language: Language) -> list[list[tuple[str, ...]]]:
    """Return the rows from the top, each column as lines: newest first; what is too old to show is counted below.

    The newest revision of all is none of them: it stands in the lowest row of the title block.
    """
    rows: list[tuple[str, ...]] = [
        (r.index, r.change, language.say(r.date), r.drawn, r.checked) for r in reversed(revisions[:-1])
    ]
    if len(rows) > EARLIER_SHOWN_COUNT:
        hidden = len(rows) - EARLIER_SHOWN_COUNT + 1
        rows = [*rows[: EARLIER_SHOWN_COUNT - 1], ("", language.say(_earlier(hidden)), "", "", "")]
    return [
        [
            fitted(text, width - 2 * INSET_MM, VALUE_MM, 2)
            for text, (_, width) in zip(row, REVISION_COLUMNS, strict=True)
        ]
        for row in rows
    ]


def _earlier(count: int) -> Phrase:
    return counted("{count} earlier revision not listed here", "{count} earlier revisions not listed here", count)


def _revision_row_mm(row: Sequence[tuple[str, ...]]) -> float:
    lines = max(len(cell) for cell in row)
    return 0.6 + ascent_mm(VALUE_MM) + (lines - 1) * PITCH * VALUE_MM + descent_mm(VALUE_MM) + 0.6


def _revision_table(revisions: Sequence[Revision], language: Language, left_mm: float, top_mm: float) -> list[Stroke]:
    """Return the table of earlier revisions growing down from `top_mm`, its headings at its foot, above the fields."""
    drawn: list[Stroke] = []
    y = top_mm
    for row in _revision_rows(revisions, language):
        x = left_mm
        for lines, (_, width) in zip(row, REVISION_COLUMNS, strict=True):
            for n, line in enumerate(lines):
                if line:
                    baseline = y + 0.6 + ascent_mm(VALUE_MM) + n * PITCH * VALUE_MM
                    drawn.append(Text((x + INSET_MM, baseline), line))
            x += width
        y += _revision_row_mm(row)
        drawn.append(Polyline(((left_mm, y), (left_mm + WIDTH_MM, y)), 0.25))
    x = left_mm
    for column, (heading, width) in enumerate(REVISION_COLUMNS):
        drawn.append(Text((x + INSET_MM, y + 0.9 + CAPTION_MM), language.say(heading), CAPTION_MM))
        if column:
            drawn.append(Polyline(((x, top_mm), (x, y + HEADING_ROW_MM)), 0.25))
        x += width
    return drawn


def _revision_height_mm(block: TitleBlock) -> float:
    rows = _revision_rows(block.revisions, block.language)
    return sum(_revision_row_mm(row) for row in rows) + HEADING_ROW_MM if rows else 0.0


def _stamp(language: Language, left_mm: float, top_mm: float) -> list[Stroke]:
    """Return the box for a stamp and the one for remarks beside it, above a line, each with its caption."""
    middle, bottom = left_mm + WIDTH_MM / 2, top_mm + STAMP_MM
    return [
        *_Cell(90, language.say(phrase("Reviewer's stamp")), "").strokes(left_mm, top_mm),
        *_Cell(90, language.say(phrase("Reviewer's remarks")), "").strokes(middle, top_mm),
        Polyline(((middle, top_mm), (middle, bottom)), 0.25),
        Polyline(((left_mm, bottom), (left_mm + WIDTH_MM, bottom)), 0.5),
    ]


def logo_box(block: TitleBlock, corner: Box) -> Box:
    """Return the field that is kept for the logo. corner: as of `title_block_strokes`."""
    left = corner.right_mm - WIDTH_MM
    top = corner.bottom_mm - title_block_height_mm(block, revisions=False)
    return Box(left, top, left + LOGO_MM[0], top + max(cell.needed_mm() for cell in _rows(block, 1, 1, "A0")[0]))


def title_block_height_mm(block: TitleBlock, revisions: bool = True) -> float:
    """Return the height of the title block, with or without the box for a stamp and the revision table above it."""
    fields = sum(max(cell.needed_mm() for cell in row) for row in _rows(block, 1, 1, "A0"))
    above = _revision_height_mm(block) + (STAMP_MM if block.stamp_box else 0.0)
    return fields + (above if revisions else 0.0)


def title_block_strokes(
    block: TitleBlock, corner: Box, number: int, count: int, paper: str, revisions: bool = True
) -> tuple[Stroke, ...]:
    """Return the title block's strokes.

    corner: the drawing space; the block stands in its lower right corner, and its right and lower edges are the frame.
    number, count: sheet n of m. paper: the name of the size.
    """
    left, right, bottom = corner.right_mm - WIDTH_MM, corner.right_mm, corner.bottom_mm
    top = bottom - title_block_height_mm(block, revisions)
    drawn: list[Stroke] = [Polyline(((left, bottom), (left, top), (right, top)), 0.7)]
    if revisions and block.stamp_box:
        drawn += _stamp(block.language, left, top)
        top += STAMP_MM
    if revisions and len(block.revisions) > 1:
        drawn += _revision_table(block.revisions, block.language, left, top)
        top += _revision_height_mm(block)
        drawn.append(Polyline(((left, top), (right, top)), 0.5))
    for row in _rows(block, number, count, paper):
        height = max(cell.needed_mm() for cell in row)
        drawn += _row_strokes(row, left, top, height)
        top += height
        if top < bottom - 0.1:
            drawn.append(Polyline(((left, top), (right, top)), 0.25))
    return tuple(drawn)
