"""A sheet with its frame and what stands at its foot, and the room that this leaves for text."""

from __future__ import annotations

from collections.abc import Sequence

from sld.documents.title import TitleBlock
from sld.sheet.flow import columns_of
from sld.sheet.paper import Paper, frame_box, frame_strokes
from sld.sheet.placement import CLEAR_MM, INSET_MM
from sld.sheet.sheet import Group, Sheet
from sld.sheet.title_block import WIDTH_MM, title_block_strokes, title_strip_strokes
from sld.symbols.stroke import Box
from sld.symbols.typeface import printable
from sld.words import phrase, sequence

__all__ = ["framed", "page_columns", "page_room"]


def page_room(paper: Paper, foot_mm: float) -> Box:
    """Return the room of a page above what stands at its foot, which is so high."""
    frame = frame_box(paper)
    return frame.grown(-INSET_MM)._replace(bottom_mm=frame.bottom_mm - foot_mm - CLEAR_MM)


def page_columns(paper: Paper, foot_mm: float) -> tuple[Box, ...]:
    """Return the columns of a page, those over the title block shortened."""
    frame, over = frame_box(paper), page_room(paper, foot_mm)
    return tuple(
        box._replace(bottom_mm=over.bottom_mm) if box.right_mm > frame.right_mm - WIDTH_MM - CLEAR_MM else box
        for box in columns_of(frame.grown(-INSET_MM))
    )


def framed(
    paper: Paper, number: int, count: int, block: TitleBlock, groups: Sequence[Group], description: str
) -> Sheet:
    """Return one sheet with its frame and title block, or the strip in its place on further ones."""
    frame, say = frame_box(paper), block.language.say
    corner = (
        title_block_strokes(block, frame, number, count, paper.name)
        if number == 1
        else title_strip_strokes(block, frame, number, count)
    )
    of_several = [phrase("sheet {number} of {count}", number=number, count=count)] if count > 1 else []
    name = say(sequence([block.title, block.document_type, *of_several]))
    border = Group("border", "frame", frame_strokes(paper))
    titled = Group("title-block", "table", corner, say(phrase("Title block")))
    return Sheet(
        paper.width_mm, paper.height_mm, number, printable(name), description, block.language.code,
        (border, *groups, titled),
    )  # fmt: skip
