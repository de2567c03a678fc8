"""Labels at print size: whole, in frames of one width, as many beside each other as there is room for."""

from __future__ import annotations

import pytest

from sld.sheet.listings.placards import LABEL_MM, Placards
from sld.symbols.stroke import Polyline, Text
from sld.symbols.typeface import text_width_mm

ROWS = (
    ("Several sources: isolate all of them", "3 sources with the network", "-TB1-QB1", "text after A CLAUSE, 2020"),
    ("Hazardous DC voltage", "", "-UC1", "text after A CLAUSE, 2020"),
    ("There is a PV system", "", "-FC1", "text after ANOTHER CLAUSE"),
)


@pytest.mark.parametrize(("width_mm", "beside", "rows"), [(70.0, 1, 3), (166.0, 2, 2), (300.0, 3, 1)])
def test_labels_stand_beside_each_other_where_there_is_room(width_mm: float, beside: int, rows: int) -> None:
    laid = Placards("labels", "Labels", ROWS).laid(width_mm)
    assert (laid.per_row_count, len(laid.rows)) == (beside, rows)
    widest = max(x for row in laid.rows for piece in row for each in piece.strokes if isinstance(each, Polyline)
                 for x, _ in each.points)  # fmt: skip
    assert widest <= width_mm


def test_every_text_stands_whole_in_its_frame_and_the_notice_is_the_largest() -> None:
    (row,) = Placards("labels", "Labels", ROWS[:1]).laid(166.0).rows
    texts = [each for piece in row for each in piece.strokes if isinstance(each, Text)]
    assert " ".join(each.text for each in texts) == " ".join(ROWS[0])
    assert all(each.at[0] + text_width_mm(each.text, each.height_mm) <= LABEL_MM for each in texts)
    assert texts[0].height_mm == max(each.height_mm for each in texts) == 5.0


def test_what_is_left_begins_where_it_was_parted() -> None:
    whole = Placards("labels", "Labels", ROWS)
    (rest,), (_, (second,)) = whole.laid(166.0, 2).rows, whole.laid(166.0).rows
    assert [each.strokes for each in rest] == [second.strokes]
