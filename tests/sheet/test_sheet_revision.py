"""The mark of a revision: a triangle with its index where the spec says that it changed something, and nowhere else.

That a triangle with the index of the revision marks what changed is common practice, from memory (no source seen).
"""

from __future__ import annotations

from pathlib import Path

import pytest
from example_specs import SPECS, document

from sld.documents.section import FlagForm
from sld.sheet.compose import Composition
from sld.sheet.listings.flag import flag_strokes, revision_strokes
from sld.sheet.sheet import Group
from sld.symbols.stroke import Box, Polyline, Text
from sld.symbols.typeface import text_box

HALL = Path(__file__).parents[2] / "specs" / "village-hall.yaml"
BOX = Box(0.0, 0.0, 5.0, 5.0)


def marks(made: Composition) -> list[Group]:
    return [group for sheet in made.sheets for group in sheet.groups if group.key.startswith("revision-")]


def test_the_triangle_stands_at_what_changed() -> None:
    """Revision B added the feed-in limit: its meter has the mark, beside its designation."""
    made = document(HALL, "drawing")
    (mark,) = marks(made)
    outline, index = mark.strokes
    assert isinstance(outline, Polyline)
    assert outline.closed
    assert len(outline.points) == 3
    assert isinstance(index, Text)
    assert index.text == "B"
    (device,) = [
        group
        for group in made.sheets[0].groups
        if any(isinstance(stroke, Text) and stroke.text.startswith("-UC1-PG2") for stroke in group.strokes)
    ]
    nearest = min(abs(text_box(t).right_mm - outline.points[0][0]) for t in device.strokes if isinstance(t, Text))
    assert nearest < 2.0


def test_a_drawing_that_says_no_place_has_none() -> None:
    others = [path for path in SPECS if path.stem in ("valley-school", "weir-house")]
    assert [marks(document(path, "drawing")) for path in others] == [[], []]


@pytest.mark.parametrize("index", ["A", "B", "M", "W", "2", "P1", "10"])
def test_the_index_stands_behind_the_triangle(index: str) -> None:
    outline, figure = revision_strokes(index, BOX)
    assert isinstance(outline, Polyline)
    assert isinstance(figure, Text)
    xs, ys = zip(*outline.points, strict=True)
    assert min(xs) >= BOX.left_mm
    assert max(xs) + 0.2 < figure.at[0]
    assert max(xs) - min(xs) >= 1.2
    assert text_box(figure).right_mm <= BOX.right_mm + 1e-6
    assert (min(ys), max(ys)) == pytest.approx((0.1, 4.9), abs=0.1)
    assert figure.height_mm == 1.8


def test_no_warning_looks_like_a_revision() -> None:
    """Three corners belong to revisions alone: advice is round, a deviation square, others have eight corners."""
    corners = {
        form: [len(stroke.points) for stroke in flag_strokes(1, BOX, form) if isinstance(stroke, Polyline)]
        for form in FlagForm if form is not FlagForm.REVISED
    }  # fmt: skip
    assert corners == {
        FlagForm.DANGER: [8], FlagForm.NON_COMPLIANCE: [8], FlagForm.ADVICE: [], FlagForm.ACCEPTED: [4],
    }  # fmt: skip


def test_the_legend_says_what_the_triangle_is() -> None:
    texts = [stroke.text for sheet in document(HALL, "drawing").sheets for group in sheet.groups
             for stroke in group.strokes if isinstance(stroke, Text)]  # fmt: skip
    words = " ".join(texts)
    assert "Changed by the newest revision" in words or "Changed by the" in words
