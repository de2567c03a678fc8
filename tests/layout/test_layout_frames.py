"""The caption of a frame: in how many lines it stands before the frame is widened for it. No source: our own rule."""

from __future__ import annotations

import pytest
from lettering import drawn

from sld.layout.diagram.diagram import Diagram, Enclosure
from sld.layout.passes.arrange import arrange
from sld.layout.plan import Plan
from sld.symbols import catalogue
from sld.symbols.typeface import text_box
from sld.words import verbatim


def framed(caption: str) -> Plan:
    """One terminal in a frame."""
    inside = drawn("strip", "terminal", enclosure="box")
    return arrange(
        Diagram(drawn("net", "network", children=(inside,)), (Enclosure("box", verbatim(caption)),)), catalogue
    )


@pytest.mark.parametrize(
    ("words", "lines"),
    [(1, ["board"]), (3, ["board"] * 3), (9, ["board board board"] * 3), (18, [" ".join(["board"] * 6)] * 3)],
)
def test_a_caption_takes_three_lines_before_its_frame_is_widened(words: int, lines: list[str]) -> None:
    plan = framed(" ".join(["board"] * words))
    (frame,) = plan.frames
    assert [frame.caption.text, *(text.text for text in plan.texts)] == lines
    assert all(text.at[0] > frame.box.left_mm for text in (frame.caption, *plan.texts))


def test_a_frame_is_no_wider_than_its_caption_needs() -> None:
    (short,), (long,) = (framed(" ".join(["board"] * words)).frames for words in (9, 18))
    assert long.box.right_mm > short.box.right_mm


def test_the_line_of_a_frame_keeps_clear_of_the_accents_of_its_caption() -> None:
    (frame,) = framed("Øvre låve, ÅÉÜ").frames
    room_mm = text_box(frame.caption).top_mm - frame.box.top_mm
    assert 0.5 <= room_mm <= 1.0  # half a millimetre: twice the width of the line; more is lost to the rows
