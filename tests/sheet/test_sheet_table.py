"""How wide and how high a table and a list are at least, and what of a heading is printed."""

from __future__ import annotations

import pytest

from sld.sheet.ink import ink_box
from sld.sheet.listings import Column, Table, TextList
from sld.sheet.listings.laid import PADDING_MM, Laid
from sld.sheet.listings.table import GAP_MM
from sld.symbols.stroke import Box, Circle, Stroke, Text
from sld.symbols.typeface import text_width_mm

WORDS = "Hauptverteilungsschutz", "Übergabeschutzschalter", "Netzverknüpfungspunkt", "Zweirichtungszähler"


def strokes(laid: Laid) -> list[Stroke]:
    return [stroke for row in laid.rows for piece in row for stroke in piece.strokes]


def height_mm(laid: Laid) -> float:
    return sum(piece.height_mm for row in laid.rows for piece in row)


def texts(laid: Laid) -> list[str]:
    return [each.text for each in strokes(laid) if isinstance(each, Text)]


def test_at_its_least_width_no_word_of_a_table_is_torn() -> None:
    """The longest words of the columns, and a gap between each two; half a millimetre less tears one."""
    table = Table("t", "T", tuple(Column("a", 1.0) for _ in WORDS), (WORDS, tuple(f"{word} {word}" for word in WORDS)))
    least_mm = sum(map(text_width_mm, WORDS)) + 3 * GAP_MM
    assert least_mm < table.least_width_mm < least_mm + 2.0
    assert set(texts(table.laid(table.least_width_mm))) == set(WORDS)
    assert set(texts(table.laid(table.least_width_mm - 0.5))) != set(WORDS)


@pytest.mark.parametrize("headed", [False, True])
@pytest.mark.parametrize("rows", [1, 7])
def test_a_table_is_hardly_higher_than_least_where_all_texts_stand_on_one_line(headed: bool, rows: int) -> None:
    column = Column("a" if headed else "", 1.0)
    table = Table("t", "T", (column, column), tuple(("one", "two") for _ in range(rows)))
    laid = table.laid(150.0)
    over_mm = laid.head.height_mm + height_mm(laid) - table.least_height_mm
    assert -0.01 < over_mm < 0.19 * rows + 0.36 * headed  # for the rules


def test_a_heading_takes_five_lines() -> None:
    column = Column(" ".join(WORDS[:1] * 7), 0.0)
    table = Table("t", "T", (column, Column("b", 1.0)), (("x", "word " * 60),))
    lines = [each.text for each in table.laid(110.0).head.strokes if isinstance(each, Text)]
    assert sum(line.startswith("Haupt") for line in lines) == 5
    assert [line for line in lines if line.endswith("…")]


def test_a_list_is_numbered_where_it_says_so() -> None:
    assert texts(TextList("l", "L", ("one", "two")).laid(60.0)) == ["one", "two"]
    assert sorted(texts(TextList("l", "L", ("one", "two"), numbered=True).laid(60.0))) == ["1.", "2.", "one", "two"]


@pytest.mark.parametrize(
    ("numbered", "dense", "count"),
    [(False, False, 3), (True, False, 3), (True, False, 40), (False, True, 40), (True, True, 40)],
)
def test_a_list_is_as_high_as_it_says_at_least(numbered: bool, dense: bool, count: int) -> None:
    """Marked ones in two columns, where there are more than three."""
    listing = TextList("l", "L", ("a",) * count, numbered=numbered, dense=dense)
    for width_mm in (60.0, 180.0):
        assert height_mm(listing.laid(width_mm)) >= listing.least_height_mm - 0.01
    assert height_mm(listing.laid(180.0)) == pytest.approx(listing.least_height_mm) or count == 3


@pytest.mark.parametrize(("dense", "apart_mm"), [(False, 8.0), (True, 4.0)])
def test_marked_paragraphs_from_four_on_stand_in_two_columns(dense: bool, apart_mm: float) -> None:
    """As wide as each other, and no text reaches over into the other or beyond the width."""
    text = "some words that take room"
    listings = [TextList("l", "L", (text,) * count, numbered=True, dense=dense) for count in (3, 4)]
    three, four = [[each for each in strokes(listing.laid(180.0)) if isinstance(each, Text)] for listing in listings]
    assert len({each.at[0] for each in three if each.text.endswith(".")}) == 1
    marks = sorted({each.at[0] for each in four if each.text.endswith(".")})
    assert marks[1] - marks[0] == pytest.approx((180.0 + apart_mm) / 2)
    ends = [max(ink_box(each).right_mm for each in four if (each.at[0] < marks[1]) == left) for left in (True, False)]
    assert ends[0] <= 90.0 - apart_mm / 2
    assert 90.0 < ends[1] <= 180.0


def test_paragraphs_that_two_columns_would_break_stand_in_one() -> None:
    """Five, each a little wider than half the room: in two columns they would be as high."""
    text = "i" * 99
    assert 86.0 - 4.0 < text_width_mm(text) < 86.0
    found = strokes(TextList("l", "L", (text.replace("ii", "i ", 5),) * 5, numbered=True).laid(180.0))
    assert len({each.at[0] for each in found if isinstance(each, Text) and each.text.endswith(".")}) == 1


@pytest.mark.parametrize(
    "lengths", [(1, 1, 1, 1), (1,) * 7, (3, 1, 1, 1), (1, 1, 1, 3), (4, 1, 2, 1, 1), (1, 3, 3, 1, 1)]
)
def test_two_columns_are_about_equally_high(lengths: tuple[int, ...]) -> None:
    """No other paragraph to end the first one with makes both lower. lengths: of the paragraphs in lines."""
    paragraphs = ["\n".join(["line"] * count) for count in lengths]
    both_mm = height_mm(TextList("l", "L", tuple(paragraphs), numbered=True).laid(180.0))
    highs = [height_mm(TextList("l", "L", (text,), numbered=True).laid(86.0)) for text in paragraphs]
    assert both_mm == pytest.approx(min(max(sum(highs[:n]), sum(highs[n:])) for n in range(1, len(highs))))


def test_paragraphs_hang_behind_their_numbers() -> None:
    """2 mm behind the longest, which all end on one line."""
    laid = TextList("l", "L", ("text",) * 12, numbered=True).laid(60.0, 1)  # the second to the twelfth
    found = [each for each in strokes(laid) if isinstance(each, Text)]
    numbers = [each for each in found if each.text.endswith(".")]
    ends = {round(each.at[0] + text_width_mm(each.text), 2) for each in numbers}
    assert len(ends) == 1
    assert {round(each.at[0], 2) for each in found if each not in numbers} == {round(ends.pop() + 2.0, 2)}
    assert {each.at[0] for each in strokes(TextList("l", "L", ("text",)).laid(60.0)) if isinstance(each, Text)} == {0.0}


@pytest.mark.parametrize("lines", [1, 9, 30])
def test_a_sign_stands_before_the_first_paragraph(lines: int) -> None:
    """Below the upper edge, 2 mm on the left of the words; the row is as high as it, the next ones have none."""
    sign = (Circle((-7.0, 5.0), 4.0),), Box(-11.0, 1.0, -3.0, 9.0)
    listing = TextList("l", "L", (" ".join(["Hauptverteilungsschutz"] * lines), "second"), numbered=True, sign=sign)
    first, second = listing.laid(80.0).rows
    (circle,) = [each for piece in (*first, *second) for each in piece.strokes if isinstance(each, Circle)]
    words = [each for each in first[0].strokes if isinstance(each, Text) and each.text.startswith("Haupt")]
    assert circle in first[0].strokes
    assert {round(each.at[0] - circle.centre[0] - 4.0, 2) for each in words} == {2.0}
    assert circle.centre[1] == pytest.approx(4.0 + PADDING_MM)
    (number,) = [each for each in first[0].strokes if isinstance(each, Text) and each.text == "1."]
    assert circle.centre[0] - 4.0 - number.at[0] - text_width_mm("1.") == pytest.approx(2.0, abs=0.35)
    assert first[0].height_mm >= 8.0 + 2 * PADDING_MM
    assert (first[0].height_mm < 9.5) == (lines == 1)


@pytest.mark.parametrize(("rows", "lines"), [(1, 1), (2, 1), (3, 2), (4, 2)])
def test_two_rows_abreast_take_one_line_and_an_odd_one_a_line_too(rows: int, lines: int) -> None:
    columns, row = (Column(""), Column("")), ("Site", "Weir")
    abreast = Table("t", "T", columns, (row,) * rows, abreast=True)
    assert abreast.least_height_mm == Table("t", "T", columns, (row,) * lines).least_height_mm
