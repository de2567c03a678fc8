"""What marks of a plan are in its legend, each by itself."""

from __future__ import annotations

from collections import Counter

import pytest

from sld.layout.plan import Frame, Plan
from sld.sheet.legend import legend
from sld.sheet.listings import Legend, LegendEntry
from sld.sheet.listings.laid import title_piece
from sld.sheet.listings.legend import BETWEEN_MM
from sld.symbols.catalogue import family
from sld.symbols.stroke import Box, Circle, Text
from sld.symbols.typeface import SLACK_MM, text_box, text_width_mm
from sld.words import ENGLISH
from sld.words.phrase import SOFT_HYPHEN

FRAME = Frame("main", Box(0.0, 0.0, 10.0, 10.0), Text((1.0, 3.0), "board"))
NOTHING = Plan(0.0, 0.0, (), (), (), (), (), (), 0)

MARKS = [
    (NOTHING, []),
    (Plan(0.0, 0.0, (), (), ((1.0, 1.0),), (), (), (), 0), ["Connected"]),
    (Plan(0.0, 0.0, (), (), (), (FRAME,), (), (), 0), ["Enclosure"]),
    (Plan(0.0, 0.0, (), (), (), (), (), (), 2), ["Crossing, not connected"]),
]


@pytest.mark.parametrize("others", [0, 1])
@pytest.mark.parametrize(("plan", "meanings"), MARKS)
def test_a_mark_is_told_where_a_plan_has_it(plan: Plan, meanings: list[str], others: int) -> None:
    """Also where only one of several plans has it."""
    told = legend((*[NOTHING] * others, plan), family("IEC"), ENGLISH)
    assert [entry.text for entry in told.entries] == meanings


def entries(count: int, high_mm: float = 5.0, text: str = "a fuse that opens") -> tuple[LegendEntry, ...]:
    """So many samples, each a circle that fills its box about another origin."""
    half = high_mm / 2
    return tuple(LegendEntry((Circle((1.0, -3.0), half),), Box(1.0 - half, -3.0 - half, 1.0 + half, -3.0 + half), text)
                 for _ in range(count))  # fmt: skip


def parts(listing: Legend, width_mm: float, start: int = 0) -> list[tuple[float, list[Circle], list[Text]]]:
    """Height, samples and texts of each row of a legend."""
    rows = [row[0] for row in listing.laid(width_mm, start).rows]
    return [(row.height_mm, [each for each in row.strokes if isinstance(each, Circle)],
             [each for each in row.strokes if isinstance(each, Text)]) for row in rows]  # fmt: skip


@pytest.mark.parametrize("high_mm", [2.0, 5.0, 14.0])
@pytest.mark.parametrize("text", ["a fuse", "a fuse that opens in the dark of a cold night"])
@pytest.mark.parametrize("count", [3, 60])
def test_a_sample_is_level_with_its_words_and_left_of_them(high_mm: float, text: str, count: int) -> None:
    """3 mm beside them, whatever its height; nothing above or below the row, or beyond its width."""
    for row in Legend("legend", "Legend", entries(count, high_mm, text)).laid(60.0).rows:
        beside: list[tuple[Circle, list[Box]]] = []
        for stroke in row[0].strokes:
            if isinstance(stroke, Circle):
                beside.append((stroke, []))
            elif isinstance(stroke, Text):
                beside[-1][1].append(text_box(stroke))
        for circle, boxes in beside:
            (x, y), half = circle.centre, circle.radius_mm
            top, foot = boxes[0].top_mm, boxes[-1].bottom_mm
            assert (top + foot) / 2 == pytest.approx(y)
            assert {round(box.left_mm - x - half, 2) for box in boxes} == {3.0}
            assert -0.01 < min(y - half, top) < max(y + half, foot) < row[0].height_mm
            assert max(box.right_mm for box in boxes) <= 60.0


def test_samples_of_several_sizes_stand_on_one_level_and_below_each_other() -> None:
    rows = Legend("legend", "Legend", (*entries(1, 14.0), *entries(2, 2.0)) * 30).laid(131.0).rows
    middles = [[each.centre for each in row[0].strokes if isinstance(each, Circle)] for row in rows]
    assert len(middles) == 45
    assert all(len({round(y, 2) for _, y in row}) == 1 for row in middles)
    assert len({round(x, 2) for row in middles for x, _ in row}) == 2


def test_as_many_columns_as_there_is_room_for() -> None:
    """Of 42 mm or less, each about as high: twenty entries of one line run down, then to the right."""
    before = 0
    for width_mm, least_count in ((60.0, 1), (86.0, 1), (87.0, 2), (131.0, 2), (132.0, 3), (222.0, 5)):
        ((height_mm, circles, texts),) = parts(Legend("legend", "Legend", entries(20, text="a fuse")), width_mm)
        in_columns = Counter(round(each.centre[0], 2) for each in circles)
        assert len(in_columns) >= max(before, least_count)
        assert max(in_columns.values()) == -(-20 // len(in_columns))
        exact = 20 % len(in_columns) == 0
        assert height_mm == pytest.approx(max(in_columns.values()) * (5.0 + BETWEEN_MM), abs=0.01 if exact else 0.5)
        assert max(text_box(each).right_mm for each in texts) <= width_mm
        before = len(in_columns)


def test_a_long_legend_can_go_on_elsewhere() -> None:
    """More than 150 mm in one column: a row for each entry, and from any of them on."""
    text = "Hauptverteilungsschutz"
    most_count = int(150.0 // (5.0 + BETWEEN_MM))
    listing = Legend("legend", "Legend", entries(most_count + 1, text=text))
    assert len(parts(listing, 60.0)) == most_count + 1
    assert len(parts(Legend("legend", "Legend", entries(most_count, text=text)), 60.0)) == 1
    for width_mm in (60.0, 132.0):
        assert sum(len(circles) for _, circles, _ in parts(listing, width_mm, 20)) == most_count - 19


def test_no_word_of_a_legend_is_torn() -> None:
    """The columns are as wide as the longest word asks for; a part of one up to its hyphen is a word."""
    word = "Hauptverteilungsschutzschalter"
    for text, columns in ((word, 1), ("Hauptverteilungs-schutzschalter", 2)):
        ((_, circles, texts),) = parts(Legend("legend", "Legend", entries(4, 20.0, text)), 106.0)
        assert len({round(each.centre[0], 2) for each in circles}) == columns
        assert {each.text for each in texts} <= {word, "Hauptverteilungs-", "schutzschalter", text}


@pytest.mark.parametrize(("spare_mm", "columns"), [(-0.1, 1), (0.1, 2)])
def test_two_columns_where_two_longest_words_have_room(spare_mm: float, columns: int) -> None:
    """Each beside its sample of 20 mm: 3 mm between these, and between the columns."""
    word = "Hauptverteilungsschutzschalter"
    column_mm = 20.0 + 3.0 + text_width_mm(word) + SLACK_MM
    ((_, circles, _),) = parts(Legend("legend", "Legend", entries(4, 20.0, word)), 2 * column_mm + 3.0 + spare_mm)
    assert len({round(each.centre[0], 2) for each in circles}) == columns


def test_words_of_a_legend_take_eight_lines() -> None:
    ((_, _, texts),) = parts(
        Legend("legend", "Legend", entries(1, text=" ".join(["Hauptverteilungsschutz"] * 9))), 60.0
    )
    assert [each.text.endswith("…") for each in texts] == [False] * 7 + [True]


def test_a_title_takes_two_lines() -> None:
    texts = [each for each in title_piece("Hauptverteilungsschutz " * 6, False, 60.0, ENGLISH).strokes
             if isinstance(each, Text)]  # fmt: skip
    assert [each.text.endswith("…") for each in texts] == [False, True]


def test_one_wide_symbol_does_not_keep_a_column_from_the_others() -> None:
    """A symbol of 20 by 20 mm in a column of its own, three low ones beside it: as high as that one alone."""
    ((height_mm, _, texts),) = parts(
        Legend("legend", "Legend", (*entries(1, 20.0, "a fuse"), *entries(3, 4.0, "a fuse"))), 60.0
    )
    assert height_mm == pytest.approx(20.0 + BETWEEN_MM)
    assert len({round(each.at[0], 2) for each in texts}) == 2


def test_a_long_word_with_joints_costs_a_legend_no_column() -> None:
    """Without them the longest word is the least width of a column; divided it is that of its longest part."""
    joined, jointed = ("Überspannungsschutzgerät", f"Überspannungs{SOFT_HYPHEN}schutzgerät")
    listings = [Legend("legend", "Legend", (*entries(20), *entries(1, text=text))) for text in (joined, jointed)]
    high, low = (sum(height for height, _, _ in parts(listing, 130.0)) for listing in listings)
    assert low < high
    said = [each.text for _, _, texts in parts(listings[1], 130.0) for each in texts]
    assert {"Überspannungs-", "schutzgerät"} <= set(said)
    assert not any(SOFT_HYPHEN in each for each in said)
