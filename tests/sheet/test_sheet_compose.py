"""From a Plan to sheets: paper, places, layers, and the look of devices that exist already or come later."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

import pytest

from sld.documents.title import TitleBlock
from sld.layout import Wanted
from sld.layout.diagram.diagram import LineKind
from sld.layout.plan import Frame as Enclosure
from sld.layout.plan import PlacedCell, PlacedFlag, Plan, Wire
from sld.sheet.compose import Composition, Drawn, Unseen, compose
from sld.sheet.ink import for_status, ink_box
from sld.sheet.legend import legend
from sld.sheet.lint import lint
from sld.sheet.listings import Column, Table, TextList
from sld.sheet.paper import PAPERS, Paper, frame_box, zone
from sld.sheet.placement import best_plan
from sld.sheet.sheet import LAYERS, Group
from sld.sheet.title_block import WIDTH_MM, title_block_height_mm
from sld.symbols import catalogue
from sld.symbols.stroke import Box, Circle, Dash, Polyline, Text
from sld.words import ENGLISH, Language

BLOCK = TitleBlock("Owner", "Title", "EFS-0001", "2026-01-31", "Maker", language=Language("de"))


def cell(key: str, symbol: str, x_mm: float, y_mm: float, label: str, status: str = "new") -> PlacedCell:
    drawn = catalogue.symbol(symbol)
    pins = tuple((name, (x_mm + x, y_mm + y)) for name, (x, y) in drawn.pins)
    return PlacedCell(key, symbol, status, (x_mm, y_mm), (0.0, 0.0), drawn.box.moved(x_mm, y_mm), pins,
                      (Text((x_mm, y_mm - 7.5), label),))  # fmt: skip


def plan(width_mm: float = 120.0, height_mm: float = 60.0, status: str = "new") -> Plan:
    """A fuse between a string and an inverter, the network at the right, all on one axis."""
    cells = (
        cell("PV", "pv_string", 5.0, 20.0, "-GC1"),
        cell("F1", "fuse", 30.0, 20.0, "-FC1 16 A", status),
        cell("T1", "inverter_3ph", 60.0, 20.0, "-TB1"),
        cell("N", "network", 100.0, 20.0, "Network"),
    )
    wires = (
        Wire(LineKind.DC, ((20.0, 20.0), (30.0, 20.0)), (("PV", "supply"), ("F1", "feed"))),
        Wire(LineKind.DC, ((40.0, 20.0), (60.0, 20.0)), (("F1", "supply"), ("T1", "feed"))),
        Wire(LineKind.AC, ((75.0, 20.0), (100.0, 20.0)), (("T1", "supply"), ("N", "feed"))),
        Wire(LineKind.EARTH, ((67.5, 25.0), (67.5, 40.0)), (("T1", "earth"), ("", ""))),
        Wire(LineKind.DATA, ((67.5, 15.0), (67.5, 3.0), (90.0, 3.0)), (("T1", "data_out"), ("", ""))),
    )
    frames = (Enclosure("BOX", Box(25.0, 8.0, 55.0, 30.0), Text((26.0, 29.0), "-UC1")),)
    flags = (PlacedFlag(7, "F1", Box(44.0, 24.0, 49.0, 29.0)),)
    return Plan(width_mm, height_mm, cells, wires, ((67.5, 40.0),), frames, flags, ())


def composed(of: Plan, *listings: TextList | Table, paper: str = "A3") -> Composition:
    return compose(
        Drawn(of), catalogue, BLOCK, listings, paper, Unseen({"T1": "-TB1 inverter\nIb = P / U", "flag-7": "too small"})
    )


def group(made: Composition, key: str) -> Group:
    return next(g for g in made.sheets[0].groups if g.key == key)


# free width = frame 390, 564, ... less 7 mm inset on both sides; free height above the title block, with 5 mm clearance
@pytest.mark.parametrize(
    ("width_mm", "height_mm", "asked", "expected"),
    [
        (120.0, 60.0, "A3", "A3"),
        (376.0, 60.0, "A3", "A3"),
        (376.1, 60.0, "A3", "A2"),
        (550.1, 60.0, "A3", "A1"),
        (797.1, 60.0, "A3", "A0"),
        (1145.0, 60.0, "A3", "A0"),
        (1145.1, 60.0, "A3", "A0+ 1289×841"),
        (120.0, 263.0, "A3", "A3"),  # it stands beside the title block
        (120.0, 263.1, "A3", "A3 upright"),
        (253.0, 300.0, "A3", "A3 upright"),  # 297 mm less margins of 30 and twice the inset
        (253.1, 300.0, "A3", "A2"),
        (300.0, 400.0, "A3", "A2 upright"),
        (120.0, 386.1, "A3", "A2 upright"),  # 420 mm less margins of 20 and twice the inset
        (120.0, 3000.0, "A3", "A0+ 841×3089"),
        (1100.0, 900.0, "A3", "A0+ 1189×1041"),  # upright it would be 1241 × 1189 mm
        (166.0, 60.0, "A4", "A4"),
        (166.1, 60.0, "A4", "A4 lying"),
        (253.0, 60.0, "A4", "A4 lying"),  # 297 mm less margins of 30 and twice the inset
        (253.1, 60.0, "A4", "A3"),
        (120.0, 60.0, "A1", "A1"),
    ],
)
def test_the_smallest_paper_from_the_asked_one_up(width_mm: float, height_mm: float, asked: str, expected: str) -> None:
    made = composed(plan(width_mm, height_mm), paper=asked)
    assert made.paper == expected
    assert asked in str(made.note)
    assert expected in str(made.note)
    for sheet in made.sheets:
        assert lint(sheet) == []


def test_a_wide_diagram_keeps_clear_of_the_title_block() -> None:
    wide = plan(376.0, 263.0)
    low = replace(wide, cells=(*wide.cells, cell("X", "fuse", 300.0, 250.0, "-FC9")))
    assert composed(wide).paper == "A3"
    assert composed(low).paper == "A2"


@pytest.mark.parametrize("paper", ["A4", "A3", "A2", "A1", "A0"])
def test_nothing_touches_on_any_sheet(paper: str) -> None:
    rows = tuple((f"-WD{n}", "H1Z2Z2-K 2 × 6 mm² " * (n % 4), f"{n} m") for n in range(120))
    table = Table("cables", "Cables", (Column("Cable"), Column("Type", 1.0), Column("Length", None, "right")), rows)
    made = compose(Drawn(plan()), catalogue, BLOCK, [table, legend([plan()], catalogue, ENGLISH)], paper)
    for sheet in made.sheets:
        assert lint(sheet) == []


@pytest.mark.parametrize(
    ("lists_count", "further"),
    [
        pytest.param(2, [(420.0, 297.0)], id="the asked size where there is one"),
        pytest.param(3, [(594.0, 420.0)], id="that of sheet 1 where it saves one sheet in three"),
    ],
)
def test_later_sheets_have_their_size_and_their_number(lists_count: int, further: list[tuple[float, float]]) -> None:
    made = composed(plan(400.0), *[TextList("listing", "Notes", tuple("word " * 40 for _ in range(60)))] * lists_count)
    assert made.paper == "A2"
    assert [sheet.number for sheet in made.sheets] == list(range(1, len(made.sheets) + 1))
    assert [(sheet.width_mm, sheet.height_mm) for sheet in made.sheets[1:]] == further
    for sheet in made.sheets:
        words = [s.text for g in sheet.groups for s in g.strokes if isinstance(s, Text)]
        assert f"{sheet.number} of {len(made.sheets)}" in words
        assert sheet.language == "de"


def test_further_sheets_are_upright_where_the_first_is_of_the_asked_size_and_upright() -> None:
    text = [TextList("listing", "Notes", tuple("word " * 40 for _ in range(90)))] * 3
    for tall, further in ((300.0, {(297.0, 420.0)}), (400.0, {(420.0, 297.0)})):
        made = composed(plan(120.0, tall), *text)
        assert made.paper.endswith("upright")
        assert {(sheet.width_mm, sheet.height_mm) for sheet in made.sheets[1:]} == further
        for sheet in made.sheets:
            assert lint(sheet) == []


def test_a_further_proportion_is_asked_for_only_where_it_may_help() -> None:
    asked: list[float] = []

    def proportions(*widths_mm: float) -> Callable[[Wanted], Iterator[Plan]]:
        def plans(_: Wanted) -> Iterator[Plan]:
            for width_mm in widths_mm:
                asked.append(width_mm)
                yield plan(width_mm, 60.0)

        return plans

    assert best_plan(proportions(300.0, 200.0), BLOCK).width_mm == 300.0
    assert asked == [300.0]
    assert best_plan(proportions(500.0, 400.0, 120.0), BLOCK).width_mm == 120.0
    assert best_plan(proportions(500.0, 450.0), BLOCK).width_mm == 500.0
    with pytest.raises(ValueError, match="no plan"):
        best_plan(proportions(), BLOCK)


@pytest.mark.parametrize(
    ("first", "least", "wanted"),
    [
        ((500.0, 60.0), (376.0, 0.0), True),  # A3 less its margins and insets: 420 - 20 - 10 - 2 × 7
        ((500.0, 60.0), (376.1, 0.0), False),  # no smaller paper than A2
        ((500.0, 60.0), (300.0, 263.1), False),  # A3 lying is lower, A3 upright narrower
        ((500.0, 60.0), (253.0, 380.0), True),  # A3 upright
        ((700.0, 60.0), (550.0, 0.0), True),  # A2 rather than A1
        ((240.0, 370.0), (376.0, 263.0), True),  # as large as A3 upright, but as asked
        ((240.0, 370.0), (253.0, 300.0), False),
    ],
)
def test_a_further_proportion_is_wanted_while_it_may_need_less_paper(
    first: tuple[float, float], least: tuple[float, float], wanted: bool
) -> None:
    said: list[bool] = []

    def plans(is_wanted: Wanted) -> Iterator[Plan]:
        said.append(is_wanted(2000.0, 2000.0))  # whatever comes first
        yield plan(*first)
        said.append(is_wanted(*least))

    assert best_plan(plans, BLOCK) == plan(*first)
    assert said == [True, wanted]


def test_what_is_drawn_once_for_many_is_found_and_explained() -> None:
    one = plan()
    cells = tuple(replace(each, alike=("F2", "F3")) if each.key == "F1" else each for each in one.cells)
    many = replace(one, cells=cells)
    made = composed(many)
    assert made.zones["F3"] == made.zones["F2"] == made.zones["F1"]
    assert not any("branches" in entry.text for entry in legend([one], catalogue, ENGLISH).entries)
    assert any("-TB1-FC1 to -TB9-FC1" in entry.text for entry in legend([many], catalogue, ENGLISH).entries)


def test_groups_are_unique_and_in_drawing_order() -> None:
    made = composed(plan())
    keys = [g.key for g in made.sheets[0].groups]
    assert len(keys) == len(set(keys))
    layers = [LAYERS.index(g.layer) for g in made.sheets[0].groups]
    assert layers == sorted(layers)


def test_conductors_are_told_apart_by_width_and_pattern() -> None:
    made = composed(plan())
    looks = {}
    for g in made.sheets[0].groups:
        line = g.strokes[0]
        if g.key.startswith("wire-"):
            assert isinstance(line, Polyline)
            looks.setdefault(g.layer, set()).add((line.width_mm, line.dash))
    assert all(len(look) == 1 for look in looks.values())
    assert len({next(iter(look)) for look in looks.values()}) == 4


def test_a_junction_is_a_filled_dot_on_the_layer_of_its_conductor() -> None:
    dots = group(composed(plan()), "junctions-earth").strokes
    assert [(type(d), d.radius_mm, d.fill.value) for d in dots if isinstance(d, Circle)] == [(Circle, 0.6, "ink")]


@pytest.mark.parametrize(
    ("status", "width_mm", "dash"),
    [("new", 0.35, Dash.CONTINUOUS), ("existing", 0.18, Dash.CONTINUOUS), ("future", 0.18, Dash.DASHED)],
)
def test_status_shows_without_colour(status: str, width_mm: float, dash: Dash) -> None:
    strokes = group(composed(plan(status=status)), "F1").strokes
    assert {(s.width_mm, s.dash) for s in strokes if isinstance(s, Polyline)} == {(width_mm, dash)}


def test_a_wire_to_a_future_device_is_dashed() -> None:
    line = group(composed(plan(status="future")), "wire-1").strokes[0]
    assert isinstance(line, Polyline)
    assert line.dash is Dash.DASHED


def test_hover_titles_and_zones() -> None:
    made = composed(plan())
    assert group(made, "T1").title == "-TB1 inverter\nIb = P / U"
    assert group(made, "flag-7-F1").title == "too small"
    boxes = [ink_box(s) for s in group(made, "T1").strokes if isinstance(s, Polyline) and s.closed]
    x, y = min(b.left_mm for b in boxes), (boxes[0].top_mm + boxes[0].bottom_mm) / 2
    assert made.zones["T1"] == "1/" + zone(PAPERS["A3"], x - 2.5, y)


def test_the_diagram_is_centred_at_the_top_of_the_frame() -> None:
    made = composed(plan())
    frame = frame_box(Paper("", 420.0, 297.0))
    fuse = next(s for s in group(made, "F1").strokes if isinstance(s, Text))
    # the fuse's label stands at (30, 12.5) in the plan of 120 mm width
    assert fuse.at == pytest.approx((frame.left_mm + (frame.width_mm - 120.0) / 2 + 30.0, frame.top_mm + 7.0 + 12.5))


def test_legend_shows_what_is_used_and_nothing_else() -> None:
    texts = [entry.text for entry in legend([plan()], catalogue, ENGLISH).entries]
    assert len(texts) == len(set(texts))
    assert {"AC power", "DC power", "Earthing and bonding", "Data", "Enclosure", "Fuse", "PV string"} <= set(texts)
    assert not any("uture" in text or "rossing" in text for text in texts)
    assert any("uture" in entry.text for entry in legend([plan(status="future")], catalogue, ENGLISH).entries)


@pytest.mark.parametrize(
    ("family", "title"),
    [("IEC", "Legend; symbols after IEC 60617"), ("ANSI", "Legend; symbols after IEEE 315-1975 (ANSI Y32.2)")],
)
def test_legend_names_the_standard_of_its_symbols_and_shows_them(family: str, title: str) -> None:
    symbols = catalogue.family(family)
    made = legend([plan()], symbols, ENGLISH, symbols.standard)
    assert made.title == title
    assert for_status(symbols.symbol("fuse").strokes, "new") in [entry.strokes for entry in made.entries]


def test_title_block_and_diagram_do_not_meet() -> None:
    made = composed(plan(376.0, 150.0))
    frame = frame_box(PAPERS[made.paper])
    height = title_block_height_mm(BLOCK)
    corner = Box(frame.right_mm - WIDTH_MM, frame.bottom_mm - height, frame.right_mm, frame.bottom_mm)
    for g in made.sheets[0].groups:
        if g.layer not in ("frame", "table"):
            assert not any(ink_box(s).meets(corner) for s in g.strokes)


@pytest.mark.parametrize("x_mm", [60.0, 330.0])
def test_a_boundary_of_ownership_ends_above_the_title_block(x_mm: float) -> None:
    """It is as long as the diagram is high, over the title block as long as there is room."""
    high = plan(376.0, 263.0)
    mark = cell("B", "ownership_boundary", x_mm, 100.0, "")
    made = composed(replace(high, cells=(*high.cells, replace(mark, labels=()))))
    (standing,) = made.diagrams
    (strip,) = [each.strip for each in standing.plan.cells if each.key == "B"]
    assert strip is not None
    frame = frame_box(standing.paper)
    is_over = x_mm + standing.x_mm > frame.right_mm - WIDTH_MM
    assert is_over == (x_mm == 330.0)
    top_of_block = frame.bottom_mm - title_block_height_mm(BLOCK) - standing.y_mm
    assert top_of_block - 10.0 < strip.bottom_mm < top_of_block if is_over else strip.bottom_mm == 263.0


def test_cautions_stand_amid_the_diagram_rather_than_on_a_second_sheet() -> None:
    """Symbols all around it leave room on sheet 1 within the diagram alone."""
    around = [
        *((x, 20.0) for x in (140.0, 200.0, 260.0, 320.0, 355.0)),
        *((x, y) for x in (5.0, 355.0) for y in (60.0, 100.0, 140.0, 180.0)),
        *((x, 215.0) for x in (5.0, 230.0, 270.0, 310.0, 355.0)),
        *((x, 250.0) for x in (5.0, 60.0, 120.0, 180.0)),
    ]
    high = plan(376.0, 263.0)
    ring = (cell(f"X{n}", "fuse", x, y, f"-FC{n}") for n, (x, y) in enumerate(around, 10))
    caution = TextList("cautions", "Cautions", ("Isolate before work.",))
    made = composed(replace(high, cells=(*high.cells, *ring)), caution)
    assert len(made.sheets) == 1
    assert "cautions" in {each.section for each in made.sheets[0].groups}
