"""DXF read back with ezdxf: every stroke and text of the sheet is there, on its layer, in millimetres with y up."""

from __future__ import annotations

import io
import math
import sys
from collections import Counter
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from drawn_sheets import NASTY, PLAIN, sheet

from sld import run
from sld.render import MissingEzdxf, dxf
from sld.sheet.ink import moved
from sld.sheet.sheet import About, Group, Sheet
from sld.symbols.stroke import Arc, Circle, Curve, Dash, Fill, Point, Polyline, Stroke, Text
from sld.symbols.typeface import printable, text_width_mm

ezdxf = pytest.importorskip("ezdxf", reason="needs ezdxf: pip install '.[dxf]'")
pytestmark = pytest.mark.filterwarnings("ignore::DeprecationWarning")  # of what the library itself imports

ROOT = Path(__file__).parents[2]
MILLIMETRES = 4
"""$INSUNITS of millimetres in the DXF reference, as is its code 370: line widths in hundredths of a millimetre."""

LAYERS = {"frame": "FRAME", "ac": "POWER-AC", "dc": "POWER-DC", "earth": "EARTH", "data": "DATA", "table": "TABLE"}

Mark = tuple[Any, ...]


def read(content: bytes) -> Any:
    return ezdxf.read(io.StringIO(content.decode("utf-8")))


@cache
def hall() -> Sheet:
    return run.draw(run.check(ROOT / "specs" / "village-hall.yaml")).sheets[0]


SHEETS = {"every stroke": sheet, "village hall": hall}


def entities(document: Any) -> list[Any]:
    """All entities of the model space, those of inserted blocks where they stand."""
    found = []
    for entity in document.modelspace():
        found += list(entity.virtual_entities()) if entity.dxftype() == "INSERT" else [entity]
    return found


def near(*numbers: float) -> tuple[float, ...]:
    """Two decimals; the last bits of a number do not decide to which side a half is rounded."""
    return tuple(round(number + 1e-6, 2) + 0.0 for number in numbers)


def expected(stroke: Stroke, height_mm: float) -> list[Mark]:
    """What one stroke is in DXF, reckoned from the stroke alone."""

    def up(*points: tuple[float, float]) -> tuple[float, ...]:
        return near(*(number for x, y in points for number in (x, height_mm - y)))

    if isinstance(stroke, Text):
        words = printable(stroke.text)
        if not words.strip():
            return []
        end = (stroke.at[0] + text_width_mm(stroke.text, stroke.height_mm), stroke.at[1])
        return [("TEXT", words, up(stroke.at, end), near(stroke.height_mm))]
    width = round(stroke.width_mm * 100)
    if isinstance(stroke, Polyline):
        filled = {Fill.NONE: [], Fill.INK: [("HATCH", True, up(*corners(stroke.points)))], Fill.PAPER: [("WIPEOUT",)]}
        return [("LWPOLYLINE", width, stroke.closed, up(*stroke.points)), *filled[stroke.fill]]
    if isinstance(stroke, Circle):
        (x, y), r = stroke.centre, stroke.radius_mm
        around = up((x - r, y - r), (x + r, y + r))
        filled = {Fill.NONE: [], Fill.INK: [("HATCH", True, around)], Fill.PAPER: [("WIPEOUT",)]}
        return [("CIRCLE", width, up(stroke.centre), near(stroke.radius_mm)), *filled[stroke.fill]]
    if isinstance(stroke, Arc):
        kind = "ARC" if stroke.radius_x_mm == stroke.radius_y_mm else "ELLIPSE"
        if stroke.end_deg - stroke.start_deg == 360:
            return [(kind, width, up(stroke.centre), near(stroke.radius_x_mm, stroke.radius_y_mm))]
        turns = [math.radians(a) for a in (stroke.start_deg, stroke.end_deg)]
        middle = sum(turns) / 2
        (x, y), rx, ry = stroke.centre, stroke.radius_x_mm, stroke.radius_y_mm
        ends = sorted(up((x + rx * math.cos(a), y + ry * math.sin(a))) for a in turns)
        return [(kind, width, *ends, up((x + rx * math.cos(middle), y + ry * math.sin(middle))))]
    parts = [stroke.points[n : n + 4] for n in range(0, len(stroke.points) - 3, 3)]
    return [("SPLINE", width, up(*part)) for part in parts]


def found(entity: Any) -> Mark:
    """The same of an entity that was read."""
    kind, width = entity.dxftype(), entity.dxf.get("lineweight", 0)
    if kind == "TEXT":
        start, end = entity.dxf.insert, entity.dxf.align_point
        return (kind, entity.plain_text(), near(start.x, start.y, end.x, end.y), near(entity.dxf.height))
    if kind == "LWPOLYLINE":
        return (kind, width, entity.closed, near(*(n for point in entity.get_points("xy") for n in point)))
    if kind == "CIRCLE":
        return (kind, width, near(entity.dxf.center.x, entity.dxf.center.y), near(entity.dxf.radius))
    if kind in ("ARC", "ELLIPSE"):
        if kind == "ELLIPSE" and entity.dxf.end_param - entity.dxf.start_param == pytest.approx(math.tau):
            axes = [
                abs(a) + abs(b) for a, b in zip((*entity.dxf.major_axis,)[:2], (*entity.minor_axis,)[:2], strict=True)
            ]
            return (kind, width, near(entity.dxf.center.x, entity.dxf.center.y), near(*axes))
        first, last = (
            (entity.dxf.start_angle, entity.dxf.end_angle) if kind == "ARC"
            else (entity.dxf.start_param, entity.dxf.end_param)
        )  # fmt: skip
        full = 360 if kind == "ARC" else math.tau
        middle = first + ((last - first) % full or full) / 2
        at = entity.vertices([first, last, middle])
        points = [near(point.x, point.y) for point in at]
        return (kind, width, *sorted(points[:2]), points[2])
    if kind == "SPLINE":
        return (kind, width, near(*(n for point in entity.control_points for n in point[:2])))
    if kind == "HATCH":
        (edge,) = entity.paths.paths
        (left, low), (right, high) = corners([vertex[:2] for vertex in edge.vertices])
        return (kind, bool(edge.is_closed), near(left, high, right, low))  # y is up
    return (kind,)


def corners(points: Sequence[Point]) -> tuple[Point, Point]:
    """The least and the greatest x and y."""
    xs, ys = zip(*points, strict=True)
    return (min(xs), min(ys)), (max(xs), max(ys))


@pytest.mark.parametrize("name", SHEETS)
def test_every_stroke_is_there_and_nothing_else(name: str) -> None:
    drawn = SHEETS[name]()
    strokes = [stroke for group in drawn.groups for stroke in group.strokes]
    wanted = Counter(mark for stroke in strokes for mark in expected(stroke, drawn.height_mm))
    assert Counter(map(found, entities(read(dxf(drawn))))) == wanted


@pytest.mark.parametrize("name", SHEETS)
def test_the_file_is_sound(name: str) -> None:
    auditor = read(dxf(SHEETS[name]())).audit()
    assert (auditor.errors, auditor.fixes) == ([], [])


def test_units_extent_and_properties() -> None:
    drawn = sheet()
    document = read(dxf(drawn, About("Merren & Sons", ("PV", "AC"), "2026-04-14")))
    assert document.header["$INSUNITS"] == MILLIMETRES
    assert document.header["$MEASUREMENT"] == 1  # metric
    assert document.header["$LWDISPLAY"] == 1
    assert tuple(document.header["$EXTMAX"])[:2] == (420.0, 297.0)  # A3 of ISO 216
    told = dict(document.header.custom_vars)
    assert told == {
        "Title": drawn.title, "Subject": drawn.description, "Author": "Merren & Sons", "Keywords": "PV, AC",
        "Date": "2026-04-14",
    }  # fmt: skip


def test_the_window_shows_the_whole_sheet() -> None:
    """A3 of ISO 216: its middle is at 210 mm, 148.5 mm; 297 mm are seen from top to bottom."""
    document = read(dxf(sheet()))
    (window,) = document.viewports.get("*Active")
    assert tuple(window.dxf.center)[:2] == (210.0, 148.5)
    assert window.dxf.height == 297.0
    assert tuple(document.header["$EXTMIN"])[:2] == (0.0, 0.0)
    space = document.modelspace()
    assert [tuple(each)[:2] for each in (space.dxf.limmin, space.dxf.limmax)] == [(0.0, 0.0), (420.0, 297.0)]


def test_what_covers_lines_has_no_outline_of_its_own() -> None:
    (variables,) = read(dxf(sheet())).objects.query("WIPEOUTVARIABLES")
    assert variables.dxf.frame == 0


@pytest.mark.parametrize("turn_deg", [360.0, -360.0])
def test_a_whole_ellipse_runs_once_round_from_its_longer_axis(turn_deg: float) -> None:
    (arc,) = drawn_by(Arc((50.0, 50.0), 2.0, 5.0, 0.0, turn_deg))
    assert (arc.dxf.start_param, arc.dxf.end_param) == pytest.approx((0.0, math.tau))
    assert tuple(arc.dxf.major_axis)[:2] == (0.0, 5.0)


def drawn_by(*strokes: Stroke) -> list[Any]:
    """The entities that some strokes come to."""
    group = Group("x", "symbol", strokes)
    return list(read(dxf(Sheet(420.0, 297.0, 1, "T", "D", "en", (group,)))).modelspace())


LINE = Polyline(((10.0, 10.0), (20.0, 10.0)))
RING, BOW = Circle((15.0, 10.0), 2.0), Arc((15.0, 10.0), 2.0, 2.0, 0.0, 90.0)
BEND = Curve(((10.0, 10.0), (12.0, 8.0), (14.0, 8.0), (16.0, 10.0)))
OTHERWISE = [
    (LINE, replace(LINE, points=((10.0, 10.0), (20.0, 11.0)))), (LINE, replace(LINE, width_mm=0.5)),
    (LINE, replace(LINE, dash=Dash.DASHED)), (LINE, replace(LINE, closed=True)), (LINE, replace(LINE, fill=Fill.INK)),
    (RING, replace(RING, centre=(16.0, 10.0))), (RING, replace(RING, radius_mm=3.0)),
    (RING, replace(RING, fill=Fill.INK)), (RING, replace(RING, width_mm=0.5)),
    (BOW, replace(BOW, centre=(16.0, 10.0))), (BOW, replace(BOW, radius_x_mm=3.0)),
    (BOW, replace(BOW, radius_y_mm=3.0)), (BOW, replace(BOW, start_deg=10.0)), (BOW, replace(BOW, end_deg=80.0)),
    (BOW, replace(BOW, width_mm=0.5)), (BEND, replace(BEND, width_mm=0.5)),
    (BEND, replace(BEND, points=(*BEND.points[:3], (16.0, 11.0)))), (LINE, BEND),
]  # fmt: skip


@pytest.mark.parametrize(("one", "other"), OTHERWISE)
def test_a_symbol_drawn_otherwise_has_a_block_of_its_own(one: Stroke, other: Stroke) -> None:
    strokes = {"-F1": one, "-F2": moved(one, 40.0, 30.0), "-F3": other}
    at = {"-F1": (10.0, 10.0), "-F2": (50.0, 40.0), "-F3": (10.0, 10.0)}
    groups = tuple(Group(key, "symbol", (stroke,), kind="fuse", at=at[key]) for key, stroke in strokes.items())
    document = read(dxf(Sheet(420.0, 297.0, 1, "T", "D", "en", groups)))
    names = {each.get_xdata("SLD")[0].value: each.dxf.name for each in document.modelspace()}
    assert names == {"-F1": "FUSE", "-F2": "FUSE", "-F3": "FUSE-2"}


@pytest.mark.parametrize(("layer", "name"), LAYERS.items())
def test_layers_tell_what_a_line_is_for(layer: str, name: str) -> None:
    groups = [group for group in hall().groups if group.layer == layer]
    count = sum(isinstance(stroke, Polyline) for group in groups for stroke in group.strokes)
    assert count
    assert len(read(dxf(hall())).modelspace().query(f"LWPOLYLINE[layer=='{name}']")) == count


def test_symbols_are_blocks_inserted_at_their_origins() -> None:
    document = read(dxf(hall()))
    inserts = {each.get_xdata("SLD")[0].value: each for each in document.modelspace().query("INSERT")}
    drawn = {group.key: group for group in hall().groups if group.kind}
    assert set(inserts) == set(drawn)
    for key, insert in inserts.items():
        group = drawn[key]
        assert group.at
        assert (insert.dxf.insert.x, insert.dxf.insert.y) == pytest.approx((group.at[0], 297.0 - group.at[1]))
        assert insert.dxf.name.startswith(group.kind.upper())
        assert insert.dxf.layer == "SYMBOL"
    assert len({each.dxf.name for each in inserts.values()}) < len(inserts), "equal symbols share a block"


@pytest.mark.parametrize(
    ("dash", "width_mm", "pattern"),
    [(Dash.DASHED, 0.25, [3.0, -0.75]), (Dash.BOUNDARY, 0.25, [6.0, -0.75, 0.125, -0.75]),
     (Dash.DOTTED, 0.35, [0.175, -1.05])],
)  # fmt: skip
def test_line_patterns_in_millimetres(dash: Dash, width_mm: float, pattern: list[float]) -> None:
    """ISO 128-2: dash 12 d, long dash 24 d, gap 3 d, dot half a line width d (from memory, as in `Dash`)."""
    line = Polyline(((0.0, 0.0), (50.0, 0.0)), width_mm, dash)
    drawn = replace(sheet(), groups=(replace(sheet().groups[0], strokes=(line,)),))
    document = read(dxf(drawn))
    (entity,) = document.modelspace()
    tags = document.linetypes.get(entity.dxf.linetype).pattern_tags.tags
    assert [tag.value for tag in tags if tag.code == 49] == pytest.approx(pattern)


def test_texts_of_a_symbol_are_on_the_layer_of_texts() -> None:
    strokes = (Polyline(((10.0, 10.0), (20.0, 10.0))), Text((10.0, 20.0), "16 A"))
    group = Group("-F1", "symbol", strokes, kind="fuse", at=(10.0, 10.0))
    space = read(dxf(Sheet(420.0, 297.0, 1, "T", "D", "en", (group,)))).modelspace()
    assert {entity.dxftype(): entity.dxf.layer for entity in space} == {"INSERT": "SYMBOL", "TEXT": "TEXT"}


def test_the_style_names_the_font_of_the_sheets() -> None:
    document = read(dxf(sheet()))
    text = document.modelspace().query("TEXT").first
    assert document.styles.get(text.dxf.style).dxf.font == "DejaVuSansCondensed.ttf"


def test_nasty_texts_come_back_as_they_are() -> None:
    texts = (*NASTY, "100 %%d", "10^3", *PLAIN)
    back = [entity.plain_text() for entity in read(dxf(sheet(texts=texts))).modelspace().query("TEXT")]
    assert back == [printable(text) for text in texts if printable(text).strip()]


def test_without_the_library_the_line_to_type_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "ezdxf", None)
    with pytest.raises(MissingEzdxf, match="-m pip install 'ezdxf"):
        dxf(sheet())


def test_drawings_written_at_once_do_not_disturb_each_other() -> None:
    """The setting for fixed metadata is one for all threads: without order some get the clock and random numbers."""
    expected = dxf(hall())
    interval = sys.getswitchinterval()
    sys.setswitchinterval(1e-5)
    try:
        with ThreadPoolExecutor(4) as threads:
            written = list(threads.map(lambda _: dxf(hall()), range(8)))
    finally:
        sys.setswitchinterval(interval)
    assert set(written) == {expected}
    assert not ezdxf.options.write_fixed_meta_data_for_testing
