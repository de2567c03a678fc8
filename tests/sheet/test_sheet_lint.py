"""Each defect of the lint with a case that has it and its neighbour that has not. Geometry only, no source needed."""

from __future__ import annotations

import time

import pytest

from sld.sheet.lint import lint
from sld.sheet.sheet import Group, Sheet
from sld.symbols.stroke import Arc, Circle, Curve, Fill, Polyline, Stroke, Text

WORD = Text((100.0, 100.0), "HHHH")  # capitals 2.5 mm high: from y = 97.5 to 100, x from 100 on
SQUARE = ((90.0, 90.0), (130.0, 90.0), (130.0, 110.0), (90.0, 110.0))


def kinds(*groups: Group) -> list[str]:
    return [defect.kind for defect in lint(Sheet(420.0, 297.0, 1, "", "", "en", groups))]


def of(strokes: tuple[Stroke, ...], layer: str = "label", key: str = "a") -> Group:
    return Group(key, layer, strokes)


@pytest.mark.parametrize(
    ("stroke", "expected"),
    [
        (Polyline(((90.0, 99.0), (130.0, 99.0))), ["text-stroke"]),
        (Polyline(((101.0, 50.0), (101.0, 150.0))), ["text-stroke"]),
        (Polyline(((90.0, 100.2), (130.0, 100.2))), ["text-stroke"]),  # 0.2 mm below, its half width is 0.125 mm
        (Polyline(((90.0, 100.3), (130.0, 100.3))), []),
        (Polyline(((90.0, 100.9), (130.0, 100.9)), 2.0), ["text-stroke"]),  # a wide line reaches the letters
        (Polyline(SQUARE, closed=True), []),
        (Polyline(SQUARE, closed=True, fill=Fill.INK), ["text-area"]),
        (Polyline(SQUARE, closed=True, fill=Fill.PAPER), []),  # drawn before the text
        (Circle((104.0, 98.0), 2.0), ["text-stroke"]),
        (Circle((104.0, 98.0), 20.0), []),
        (Circle((104.0, 98.0), 20.0, fill=Fill.INK), ["text-area"]),
        (Arc((104.0, 98.8), 10.0, 10.0, 170.0, 190.0), []),
        (Arc((104.0, 98.8), 3.0, 3.0, 170.0, 190.0), ["text-stroke"]),
        (Curve(((90.0, 98.8), (95.0, 98.8), (100.0, 98.8), (130.0, 98.8))), ["text-stroke"]),
        (Curve(((90.0, 105.0), (95.0, 105.0), (100.0, 105.0), (130.0, 105.0))), []),
    ],
)
def test_text_on_strokes_and_areas(stroke: Stroke, expected: list[str]) -> None:
    assert kinds(of((stroke,), "table", "b"), of((WORD,))) == expected


def test_paper_drawn_later_hides_a_text() -> None:
    cover = Polyline(SQUARE, closed=True, fill=Fill.PAPER)
    assert kinds(of((WORD,)), of((cover,), "table", "b")) == ["text-area"]


@pytest.mark.parametrize(
    ("at", "expected"), [((104.0, 100.0), ["text-text"]), ((100.0, 102.0), ["text-text"]), ((100.0, 103.0), [])]
)
def test_text_on_text(at: tuple[float, float], expected: list[str]) -> None:
    assert kinds(of((WORD,)), of((Text(at, "HHHH"),), key="b")) == expected


def test_descenders_count() -> None:
    below = Text((100.0, 103.1), "HHHH")
    assert kinds(of((Text((100.0, 100.0), "HHHH"), below))) == []
    assert kinds(of((Text((100.0, 100.0), "gggg"), below))) == ["text-text"]


def box(left: float) -> Polyline:
    return Polyline(((left, 50.0), (left + 10.0, 50.0), (left + 10.0, 60.0), (left, 60.0)), closed=True)


@pytest.mark.parametrize(("left", "expected"), [(55.0, ["symbol-symbol"]), (60.0, []), (70.0, [])])
def test_symbol_on_symbol(left: float, expected: list[str]) -> None:
    assert kinds(of((box(50.0),), "symbol"), of((box(left),), "symbol", "b")) == expected


@pytest.mark.parametrize(
    ("points", "expected"),
    [
        (((40.0, 55.0), (70.0, 55.0)), ["wire-symbol"]),
        (((40.0, 55.0), (50.0, 55.0)), []),  # ends at the symbol's edge
        (((40.0, 55.0), (52.5, 55.0)), []),  # ends at a terminal inside
        (((40.0, 60.0), (70.0, 60.0)), []),  # along the edge
        (((40.0, 65.0), (70.0, 65.0)), []),
    ],
)
def test_wire_through_symbol(points: tuple[tuple[float, float], ...], expected: list[str]) -> None:
    assert kinds(of((Polyline(points),), "dc", "wire"), of((box(50.0),), "symbol")) == expected


@pytest.mark.parametrize(
    ("text", "layer", "key", "expected"),
    [
        (Text((50.0, 50.0), "caption", 1.8), "label", "a", ["small-text"]),
        (Text((50.0, 50.0), "caption", 1.8), "table", "title-block", []),
        (Text((50.0, 50.0), "kWh", 1.8), "symbol", "a", []),
        (Text((50.0, 50.0), "kWh", 1.7), "symbol", "a", ["small-text"]),
        (Text((50.0, 50.0), "caption", 2.5), "label", "a", []),
        (Text((50.0, 50.0), "caption", 2.4), "label", "a", ["small-text"]),
        (Text((50.0, 50.0), "日本", 2.5), "label", "a", ["glyph"]),
        (Text((10.0, 50.0), "out", 2.5), "label", "a", ["outside"]),
        (Text((21.0, 50.0), "in", 2.5), "label", "a", []),
        (Text((405.0, 50.0), "sticks out", 2.5), "label", "a", ["outside"]),
        (Text((10.0, 50.0), "A", 3.5), "frame", "a", []),
    ],
)
def test_lettering_and_frame(text: Text, layer: str, key: str, expected: list[str]) -> None:
    assert kinds(of((text,), layer, key)) == expected


def test_a_large_sheet_takes_less_than_two_seconds() -> None:
    strokes: list[Stroke] = []
    for n in range(10_000):
        x, y = 25.0 + n % 100 * 11.0, 15.0 + n // 100 * 8.0
        strokes += [Text((x, y), f"-WD{n}"), Polyline(((x, y + 2.0), (x + 9.0, y + 2.0)))]
    sheet = Sheet(1189.0, 841.0, 1, "", "", "en", (Group("many", "table", tuple(strokes)),))
    lint(Sheet(420.0, 297.0, 1, "", "", "en", (of((WORD,)),)))  # reads the font
    start = time.process_time()
    lint(sheet)
    assert time.process_time() - start < 2.0


def test_a_defect_tells_where_it_is() -> None:
    (defect,) = lint(Sheet(420.0, 297.0, 1, "", "", "en", (of((WORD,)), of((WORD,), key="b"))))
    assert defect.keys == ("a", "b")
    assert 100.0 < defect.at[0] < 111.0
    assert 97.0 < defect.at[1] < 100.0
