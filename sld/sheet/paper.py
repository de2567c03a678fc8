"""Drawing sheets after ISO 5457: sizes, margins, frame, grid reference, centring marks. All lengths in millimetres.

Sizes, field counts, the 50 mm fields counted outwards from the centring marks and the letters without I and O follow
ISO 5457:1999 + A1:2010 as its published summaries give them. From memory, to be checked against a purchased copy:
margins of 20 mm on the left and 10 mm elsewhere, frame 0.7 mm, a grid border 5 mm wide with 0.35 mm lines, centring
marks of 0.7 mm reaching 5 mm into the drawing space, the A4 sheet lettered at its top and right only, and the larger
sheets lying or standing. The grid characters are 2.5 mm high and not 3.5 mm, so that their full line height clears the
lines of the border; a row of two letters, on lengthened sheets only, has them 1.8 mm high.
"""

from __future__ import annotations

import math
from itertools import pairwise

from sld.frozen import dataclass
from sld.sheet.ink import centred
from sld.sheet.title_block import WIDTH_MM as TITLE_MM
from sld.symbols.stroke import Box, Point, Polyline, Stroke

__all__ = [
    "BORDER_MM",
    "LADDER",
    "LEFT_MARGIN_MM",
    "LETTERS",
    "MARGIN_MM",
    "PAPERS",
    "Paper",
    "extended",
    "frame_box",
    "frame_strokes",
    "from_size_up",
    "lying",
    "upright",
    "zone",
]

FIELD_MM = 50.0
LEFT_MARGIN_MM = 20.0
MARGIN_MM = 10.0
BORDER_MM = 5.0
FRAME_LINE_MM = 0.7
GRID_LINE_MM = 0.35
CHARACTER_MM = 2.5
NARROW_CHARACTER_MM = 1.8
LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
"""The alphabet without I and O, which are taken for 1 and 0 (ISO 5457)."""


@dataclass(frozen=True, slots=True)
class Paper:
    """A trimmed sheet as it is read. `all_sides`: whether the grid reference is repeated on all four sides."""

    name: str
    width_mm: float
    height_mm: float
    all_sides: bool = True

    @property
    def size(self) -> str:
        """Return the name without how the sheet lies: one of the ladder, or that of a lengthened sheet."""
        return self.name.partition(" ")[0]

    @property
    def columns_count(self) -> int:
        """Return the number of grid fields along the horizontal edges."""
        return fields_count(self.width_mm)

    @property
    def rows_count(self) -> int:
        """Return the number of grid fields along the vertical edges."""
        return fields_count(self.height_mm)


def fields_count(length_mm: float) -> int:
    """Return the even number of 50 mm fields nearest to an edge: ISO 5457 asks for a number divisible by two."""
    return max(2, 2 * math.floor(length_mm / (2 * FIELD_MM) + 0.5))


PAPERS: dict[str, Paper] = {
    "A4": Paper("A4", 210.0, 297.0, all_sides=False),
    "A3": Paper("A3", 420.0, 297.0),
    "A2": Paper("A2", 594.0, 420.0),
    "A1": Paper("A1", 841.0, 594.0),
    "A0": Paper("A0", 1189.0, 841.0),
}

LADDER = ("A4", "A3", "A2", "A1", "A0")
"""The sizes from the smallest up: what does not fit goes on to the next."""


def upright(paper: Paper) -> Paper:
    """Return a sheet standing on its short side."""
    if paper.height_mm >= paper.width_mm:
        return paper
    return Paper(f"{paper.name} upright", paper.height_mm, paper.width_mm, paper.all_sides)


def lying(paper: Paper) -> Paper:
    """Return a sheet lying on its long side."""
    if paper.width_mm >= paper.height_mm:
        return paper
    return Paper(f"{paper.name} lying", paper.height_mm, paper.width_mm, paper.all_sides)


def from_size_up(name: str) -> tuple[Paper, ...]:
    """Return the papers from a size up, of each the usual way first: A4 stands. Raises KeyError for another name."""
    if name not in PAPERS:
        raise KeyError(name)
    found: list[Paper] = []
    for size in LADDER[LADDER.index(name) :]:
        paper = PAPERS[size]
        found += [paper, lying(paper) if upright(paper) == paper else upright(paper)]
    return tuple(found)


def extended(width_mm: float, height_mm: float) -> Paper:
    """Return an A0 sheet lengthened in whole steps of two fields (100 mm) to at least the given size.

    It lies or stands, whichever takes less paper. Its name carries the size, because there is no standard one: ISO 5457
    discourages lengthened sheets.
    """
    step = 2 * FIELD_MM
    found = []
    for a0 in (PAPERS["A0"], upright(PAPERS["A0"])):
        width = a0.width_mm + max(0, math.ceil((width_mm - a0.width_mm) / step)) * step
        height = a0.height_mm + max(0, math.ceil((height_mm - a0.height_mm) / step)) * step
        found.append(Paper(f"A0+ {width:.0f}×{height:.0f}", width, height))
    return min(found, key=lambda paper: paper.width_mm * paper.height_mm)


def frame_box(paper: Paper) -> Box:
    """Return the drawing space: what lies inside the frame."""
    return Box(LEFT_MARGIN_MM, MARGIN_MM, paper.width_mm - MARGIN_MM, paper.height_mm - MARGIN_MM)


def _letter(index: int) -> str:
    """Return the name of the index-th row, counting from 0; on lengthened sheets AA follows Z (from memory)."""
    if index < len(LETTERS):
        return LETTERS[index]
    return LETTERS[index // len(LETTERS) - 1] + LETTERS[index % len(LETTERS)]


def _field(position_mm: float, length_mm: float) -> int:
    """Return the number of the field, from 0, that a position along an edge lies in; corner fields take the rest."""
    count = fields_count(length_mm)
    return min(max(math.floor((position_mm - length_mm / 2) / FIELD_MM + count / 2), 0), count - 1)


def zone(paper: Paper, x_mm: float, y_mm: float) -> str:
    """Return the grid reference of a point, e.g. "B4": letters from the top down, numbers from left to right."""
    return f"{_letter(_field(y_mm, paper.height_mm))}{_field(x_mm, paper.width_mm) + 1}"


def _bounds(length_mm: float, start_mm: float, end_mm: float) -> list[float]:
    """Return where the fields begin and end along an edge whose drawing space reaches from start to end."""
    count = fields_count(length_mm)
    inner = [length_mm / 2 + (i - count / 2) * FIELD_MM for i in range(1, count)]
    return [start_mm, *inner, end_mm]


def _character_mm(name: str) -> float:
    """Return the height of a field's name: two letters are wider than the border unless they are small."""
    return CHARACTER_MM if len(name) == 1 or name.isdigit() else NARROW_CHARACTER_MM


def _edge(paper: Paper, across: bool, near: bool) -> list[Stroke]:
    """Return one side of the grid reference: ticks between the fields and a character in each."""
    frame = frame_box(paper)
    if across:
        bounds = _bounds(paper.width_mm, frame.left_mm, frame.right_mm)
        base, outward = (frame.top_mm, -1.0) if near else (frame.bottom_mm, 1.0)
    else:
        bounds = _bounds(paper.height_mm, frame.top_mm, frame.bottom_mm)
        base, outward = (frame.left_mm, -1.0) if near else (frame.right_mm, 1.0)
    middle, far = base + outward * BORDER_MM / 2, base + outward * BORDER_MM

    def at(along: float, out: float) -> Point:
        return (along, out) if across else (out, along)

    strokes: list[Stroke] = [Polyline((at(b, base), at(b, far)), GRID_LINE_MM) for b in bounds]
    strokes.append(Polyline((at(bounds[0], far), at(bounds[-1], far)), GRID_LINE_MM))
    for index, (start, end) in enumerate(pairwise(bounds)):
        name = str(index + 1) if across else _letter(index)
        strokes.append(centred(name, at((start + end) / 2, middle), _character_mm(name)))
    return strokes


def _centring_marks(paper: Paper) -> list[Stroke]:
    """Return four marks on the axes of the trimmed sheet, from the grid border's outer edge to 5 mm inside the frame.

    Where the title block reaches to the middle of the foot (A4, A3 upright), the mark there ends at the frame.
    """
    frame = frame_box(paper)
    x, y = paper.width_mm / 2, paper.height_mm / 2
    foot = frame.bottom_mm if x >= frame.right_mm - TITLE_MM else frame.bottom_mm - BORDER_MM
    ends = (
        ((x, frame.top_mm - BORDER_MM), (x, frame.top_mm + BORDER_MM)),
        ((x, frame.bottom_mm + BORDER_MM), (x, foot)),
        ((frame.left_mm - BORDER_MM, y), (frame.left_mm + BORDER_MM, y)),
        ((frame.right_mm + BORDER_MM, y), (frame.right_mm - BORDER_MM, y)),
    )
    return [Polyline(pair, FRAME_LINE_MM) for pair in ends]


def frame_strokes(paper: Paper) -> tuple[Stroke, ...]:
    """Return the frame, the grid reference and the centring marks of a sheet."""
    frame = frame_box(paper)
    corners = ((frame.left_mm, frame.top_mm), (frame.right_mm, frame.top_mm),
               (frame.right_mm, frame.bottom_mm), (frame.left_mm, frame.bottom_mm))  # fmt: skip
    strokes: list[Stroke] = [Polyline(corners, FRAME_LINE_MM, closed=True)]
    strokes += _edge(paper, across=True, near=True) + _edge(paper, across=False, near=False)
    if paper.all_sides:
        strokes += _edge(paper, across=True, near=False) + _edge(paper, across=False, near=True)
    return (*strokes, *_centring_marks(paper))
