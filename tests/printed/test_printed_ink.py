"""The ink in each format: widths, patterns, arcs, fills, colours and letters, measured where they must be.

One small sheet of known strokes is drawn as SVG (by CairoSVG), PDF (by poppler) and PNG, and looked at in dots; DXF is
read with ezdxf. What is expected is reckoned from the strokes alone: an arc goes through (cx + rx cos a, cy + ry sin a)
with y down, a dash of ISO 128-2 is so many line widths long.
"""

from __future__ import annotations

import io
import math
import shutil
import subprocess
from functools import cache
from itertools import groupby, pairwise
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import cairosvg
import pytest

from sld.render import dxf, pdf, png, svg
from sld.render.font import cairo_with_font
from sld.sheet.sheet import Group, Sheet
from sld.symbols.stroke import Arc, Circle, Curve, Dash, Fill, Polyline, Text
from sld.symbols.typeface import text_width_mm

FORMATS = ("svg", "pdf", "png")
DOTS_PER_MM = 20
WIDTH_MM, HEIGHT_MM = 120.0, 90.0
DARK = 128

WIDTHS_MM = (0.18, 0.25, 0.35, 0.5, 0.7)
LINES = {width: Polyline(((2.0, 2.0 + 2 * n), (8.0, 2.0 + 2 * n)), width) for n, width in enumerate(WIDTHS_MM)}

# lengths in line widths after ISO 128-2 (from memory): dashes and gaps in turn, a dash first
PATTERNS = {
    Dash.DASHED: (12, 3),
    Dash.BOUNDARY: (24, 3, 0.5, 3),
    Dash.PROPERTY: (24, 3, 0.5, 3, 0.5, 3),
    Dash.SPACED: (12, 18),
    Dash.DOT: (12, 3, 0.5, 3),
    Dash.DOUBLE_DASH: (12, 3, 12, 3, 0.5, 3),
    Dash.DOUBLE_DOT: (12, 3, 0.5, 3, 0.5, 3),
    Dash.LONG_SHORT: (24, 3, 6, 3),
}
DASHED = {
    (dash, width): Polyline(((12.0, 2.0 + n), (112.0, 2.0 + n)), width, dash)
    for n, (dash, width) in enumerate((dash, width) for dash in PATTERNS for width in (0.25, 0.5))
}
DOTS = Polyline(((12.0, 20.0), (112.0, 20.0)), 0.35, Dash.DOTTED)

ARCS = (
    Arc((10.0, 30.0), 5.0, 5.0, 0.0, 180.0, 0.5),
    Arc((22.0, 30.0), 5.0, 5.0, 180.0, 360.0, 0.5),
    Arc((34.0, 30.0), 5.0, 5.0, -90.0, 30.0, 0.5),
    Arc((46.0, 30.0), 5.0, 2.5, 20.0, 130.0, 0.5),
    Arc((58.0, 30.0), 2.5, 5.0, 200.0, 290.0, 0.5),
    Arc((70.0, 30.0), 5.0, 5.0, 40.0, 300.0, 0.5),
    Arc((82.0, 30.0), 5.0, 5.0, 90.0, -60.0, 0.5),
)
FULL = Arc((94.0, 30.0), 5.0, 3.0, 0.0, 360.0, 0.5)

WAVE = Curve(((5.0, 45.0), (10.0, 35.0), (15.0, 55.0), (20.0, 45.0), (25.0, 35.0), (30.0, 55.0), (35.0, 45.0)), 0.5)
BENT = Polyline(((40.0, 40.0), (50.0, 40.0), (50.0, 48.0), (60.0, 52.0)), 0.5)

FILLED = {
    "ink": Polyline(((65.0, 40.0), (73.0, 40.0), (73.0, 48.0), (65.0, 48.0)), 0.25, closed=True, fill=Fill.INK),
    "paper": Polyline(((77.0, 40.0), (85.0, 40.0), (85.0, 48.0), (77.0, 48.0)), 0.25, closed=True, fill=Fill.PAPER),
    "none": Polyline(((89.0, 40.0), (97.0, 40.0), (97.0, 48.0), (89.0, 48.0)), 0.25, closed=True),
    "dot": Circle((104.0, 44.0), 2.0, 0.25, Fill.INK),
    "ring": Circle((112.0, 44.0), 2.0, 0.25, Fill.PAPER),
}
BELOW = Polyline(((76.0, 44.0), (118.0, 44.0)), 0.5)
"""Goes on below all but the first of the filled shapes, which are drawn after it."""

ROLES = {
    role: Polyline(((5.0, 58.0 + 3 * n), (55.0, 58.0 + 3 * n)), 1.0, role=role)
    for n, role in enumerate(("", "ac", "dc", "earth", "data"))
}
LETTERS = tuple(Text((60.0 + 10 * n, 64.0), "H", height) for n, height in enumerate((1.8, 2.5, 3.5, 5.0)))
WORDS = Text((60.0, 75.0), "MMMMMMMM", 2.5)


@cache
def sheet(colour: str = "monochrome") -> Sheet:
    strokes = (
        *LINES.values(),
        *DASHED.values(),
        DOTS,
        *ARCS,
        FULL,
        WAVE,
        BENT,
        BELOW,
        *FILLED.values(),
        *ROLES.values(),
    )
    groups = (Group("ink", "table", strokes), Group("letters", "table", (*LETTERS, WORDS)))
    return Sheet(WIDTH_MM, HEIGHT_MM, 1, "Ink", "", "en", groups, colour)


@cache
def picture(form: str, colour: str = "monochrome") -> Any:
    """The sheet in dots as it looks in a format, DOTS_PER_MM by DOTS_PER_MM in a square millimetre."""
    image = pytest.importorskip("PIL.Image")
    dpi = DOTS_PER_MM * 25.4
    if form == "png":
        content = png(sheet(colour), dpi)
    elif form == "svg":
        cairo_with_font()  # CairoSVG reads no font from inside an SVG
        content = cairosvg.svg2png(
            svg(sheet(colour)), output_width=round(WIDTH_MM * DOTS_PER_MM), background_color="white"
        )
    else:
        if shutil.which("pdftoppm") is None:
            pytest.skip("needs pdftoppm (poppler-utils)")
        with TemporaryDirectory() as folder:
            (Path(folder) / "ink.pdf").write_bytes(pdf((sheet(colour),)))
            command = ["pdftoppm", "-r", str(dpi), "-png", "-singlefile", "ink.pdf", "page"]
            subprocess.run(command, cwd=folder, check=True, capture_output=True)
            content = (Path(folder) / "page.png").read_bytes()
    return image.open(io.BytesIO(content)).convert("RGB")


def colour_at(form: str, x_mm: float, y_mm: float, colour: str = "monochrome") -> tuple[int, int, int]:
    drawn = picture(form, colour)
    return tuple(drawn.getpixel((int(x_mm * DOTS_PER_MM), int(y_mm * DOTS_PER_MM))))  # type: ignore[return-value]


def dark(form: str, x_mm: float, y_mm: float) -> bool:
    return max(colour_at(form, x_mm, y_mm)) < DARK


def runs_mm(form: str, y_mm: float, left_mm: float, right_mm: float) -> list[tuple[bool, float]]:
    """Dark and light stretches along a level line, each with its length."""
    steps = range(int(left_mm * DOTS_PER_MM), int(right_mm * DOTS_PER_MM))
    dots = (max(picture(form).getpixel((x, int(y_mm * DOTS_PER_MM)))) < DARK for x in steps)
    return [(ink, len(list(run)) / DOTS_PER_MM) for ink, run in groupby(dots)]


EACH = pytest.mark.parametrize("form", FORMATS)


@EACH
def test_size(form: str) -> None:
    assert picture(form).size == (WIDTH_MM * DOTS_PER_MM, HEIGHT_MM * DOTS_PER_MM)


@EACH
@pytest.mark.parametrize("width_mm", WIDTHS_MM)
def test_line_width(form: str, width_mm: float) -> None:
    x, y = (round(value * DOTS_PER_MM) for value in LINES[width_mm].points[0])
    column = [max(picture(form).getpixel((x + 60, y + n))) < DARK for n in range(-DOTS_PER_MM + 2, DOTS_PER_MM - 2)]
    assert sum(column) / DOTS_PER_MM == pytest.approx(width_mm, abs=1.2 / DOTS_PER_MM)


@EACH
@pytest.mark.parametrize(("dash", "width_mm"), DASHED)
def test_dashes_are_so_many_line_widths_long(form: str, dash: Dash, width_mm: float) -> None:
    line = DASHED[dash, width_mm]
    found = runs_mm(form, line.points[0][1], line.points[0][0], line.points[0][0] + 45.0)[:-1]
    wanted = [part * width_mm for _ in range(len(found)) for part in PATTERNS[dash]][: len(found)]
    assert len(found) > 4
    assert [ink for ink, _ in found] == [n % 2 == 0 for n in range(len(found))]
    assert [length for _, length in found] == pytest.approx(wanted, abs=0.11)
    assert sum(length for _, length in found) == pytest.approx(sum(wanted), abs=0.11)


@EACH
def test_dots_have_round_ends_that_make_them_print(form: str) -> None:
    """A dot of half a line width gets half a line width at each end; dot and gap are 3.5 line widths together."""
    width = DOTS.width_mm
    found = runs_mm(form, DOTS.points[0][1], 20.0, 40.0)[1:-1]
    lengths = {ink: [length for other, length in found if other == ink] for ink in (True, False)}
    assert sum(lengths[True]) / len(lengths[True]) == pytest.approx(1.5 * width, abs=0.08)
    assert sum(lengths[False]) / len(lengths[False]) == pytest.approx(2.0 * width, abs=0.08)


def on_arc(arc: Arc, part: float) -> tuple[float, float]:
    angle = math.radians(arc.start_deg + part * (arc.end_deg - arc.start_deg))
    return arc.centre[0] + arc.radius_x_mm * math.cos(angle), arc.centre[1] + arc.radius_y_mm * math.sin(angle)


@EACH
@pytest.mark.parametrize("arc", ARCS)
def test_an_arc_runs_from_its_start_to_its_end_and_nowhere_else(form: str, arc: Arc) -> None:
    turn = abs(arc.end_deg - arc.start_deg)
    inside = [part / 20 for part in range(1, 20)]
    outside = [1 + (360 - turn) / turn * part / 20 for part in range(2, 19)]
    assert all(dark(form, *on_arc(arc, part)) for part in inside)
    assert not any(dark(form, *on_arc(arc, part)) for part in outside)


@EACH
def test_a_full_turn_is_closed(form: str) -> None:
    assert all(dark(form, *on_arc(FULL, part / 40)) for part in range(40))


@EACH
def test_a_curve_goes_through_its_points(form: str) -> None:
    """Halfway a cubic Bezier curve is at (p0 + 3 p1 + 3 p2 + p3) / 8, and so on by powers of 1/2 and 1/4."""
    for n in (0, 3):
        p = WAVE.points[n : n + 4]
        for weights in ((1, 0, 0, 0), (27, 27, 9, 1), (1, 3, 3, 1), (1, 9, 27, 27), (0, 0, 0, 1)):
            x, y = (sum(w * q[axis] for w, q in zip(weights, p, strict=True)) / sum(weights) for axis in (0, 1))
            assert dark(form, x + (0.1 if weights[0] else -0.1), y)


@EACH
def test_a_polyline_goes_through_its_corners(form: str) -> None:
    for (x1, y1), (x2, y2) in pairwise(BENT.points):
        for part in (0.1, 0.5, 0.9):
            assert dark(form, x1 + part * (x2 - x1), y1 + part * (y2 - y1))
    assert not dark(form, 45.0, 48.0)
    assert not dark(form, 50.0, 46.0 + 10)


@EACH
@pytest.mark.parametrize(
    ("name", "inside"), [("ink", True), ("paper", False), ("none", True), ("dot", True), ("ring", False)]
)
def test_fill(form: str, name: str, inside: bool) -> None:
    """The line below shows through a shape that is not filled, and is covered by one that is filled with paper."""
    shape = FILLED[name]
    x, y = shape.centre if isinstance(shape, Circle) else (shape.points[0][0] + 4, shape.points[0][1] + 4)
    assert dark(form, x, y) == inside
    if name == "none":
        assert not dark(form, x, y + 2)
    edge = (shape.centre[0], shape.centre[1] - shape.radius_mm) if isinstance(shape, Circle) else shape.points[0]
    assert dark(form, *edge)
    if isinstance(shape, Polyline):
        (x1, y1), (x2, y2) = shape.points[0], shape.points[-1]
        assert dark(form, (x1 + x2) / 2, (y1 + y2) / 2), "it is closed"


def seen(form: str, role: str, scheme: str) -> tuple[int, int, int]:
    (x1, y1), (x2, _) = ROLES[role].points
    return colour_at(form, (x1 + x2) / 2, y1, scheme)


@EACH
@pytest.mark.parametrize("role", ROLES)
def test_without_colour_all_is_black(form: str, role: str) -> None:
    assert seen(form, role, "monochrome") == (0, 0, 0)


def contrast(colour: tuple[int, int, int]) -> float:
    """WCAG 2.1, contrast ratio to white."""
    linear = [c / 255 / 12.92 if c / 255 <= 0.04045 else ((c / 255 + 0.055) / 1.055) ** 2.4 for c in colour]
    return 1.05 / (0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2] + 0.05)


@EACH
def test_in_colour_each_role_has_its_own_and_can_be_read(form: str) -> None:
    colours = {role: seen(form, role, "restrained") for role in ROLES}
    assert colours[""] == (0, 0, 0)
    assert len(set(colours.values())) == len(colours)
    assert all(contrast(colour) >= 4.5 for colour in colours.values())
    red, green, blue = colours["earth"]
    assert green > max(red, blue)  # IEC 60445: protective conductors are green and yellow
    assert colours == {role: seen("png", role, "restrained") for role in ROLES}


@EACH
@pytest.mark.parametrize("letter", LETTERS)
def test_capitals_are_as_high_as_said_and_stand_on_the_baseline(form: str, letter: Text) -> None:
    box = picture(form).crop(
        tuple(int(v * DOTS_PER_MM) for v in (letter.at[0] - 1, letter.at[1] - 7, letter.at[0] + 7, letter.at[1] + 2))
    )
    left, top, _, bottom = box.convert("L").point(lambda value: 255 if value < DARK else 0).getbbox()
    assert bottom / DOTS_PER_MM == pytest.approx(7.0, abs=0.1)
    assert (bottom - top) / DOTS_PER_MM == pytest.approx(letter.height_mm, abs=0.1)
    assert 0.9 < left / DOTS_PER_MM < 1.0 + 0.2 * letter.height_mm


@EACH
def test_a_line_of_text_is_as_wide_as_measured(form: str) -> None:
    box = picture(form).crop(tuple(int(v * DOTS_PER_MM) for v in (59.0, 71.0, 119.0, 76.0)))
    left, _, right, _ = box.convert("L").point(lambda value: 255 if value < DARK else 0).getbbox()
    advance = text_width_mm(WORDS.text, WORDS.height_mm)
    assert advance - 1.0 < (right - left) / DOTS_PER_MM <= advance + 0.1


@cache
def in_dxf(colour: str = "monochrome") -> Any:
    ezdxf = pytest.importorskip("ezdxf", reason="needs ezdxf: pip install '.[dxf]'")
    return ezdxf.read(io.StringIO(dxf(sheet(colour)).decode("utf-8")))


DXF = pytest.mark.filterwarnings("ignore::DeprecationWarning")  # of what the library itself imports


@DXF
@pytest.mark.parametrize("arc", ARCS)
def test_dxf_an_arc_has_its_ends_and_its_middle(arc: Arc) -> None:
    """Y is up in DXF: a point is (x, height - y)."""
    wanted = [(x, HEIGHT_MM - y) for x, y in (on_arc(arc, part) for part in (0.0, 0.5, 1.0))]
    centre = (arc.centre[0], HEIGHT_MM - arc.centre[1])
    around = in_dxf().modelspace().query("ARC ELLIPSE")
    (entity,) = [e for e in around if _apart([(e.dxf.center.x, e.dxf.center.y)], [centre]) < 0.01]
    if entity.dxftype() == "ARC":
        first, last, whole = entity.dxf.start_angle, entity.dxf.end_angle, 360.0
    else:
        first, last, whole = entity.dxf.start_param, entity.dxf.end_param, math.tau
    span = (last - first) % whole
    found = [(p.x, p.y) for p in entity.vertices([first, first + span / 2, last])]
    assert min(_apart(found, wanted), _apart(found[::-1], wanted)) < 0.01
    assert entity.dxf.lineweight == 50


def _apart(one: list[tuple[float, float]], other: list[tuple[float, float]]) -> float:
    return max(math.dist(a, b) for a, b in zip(one, other, strict=True))


@DXF
@pytest.mark.parametrize(("dash", "width_mm"), [*DASHED, (Dash.DOTTED, 0.35)])
def test_dxf_dashes_are_so_many_line_widths_long(dash: Dash, width_mm: float) -> None:
    line = DASHED.get((dash, width_mm), DOTS)
    at = (line.points[0][0], HEIGHT_MM - line.points[0][1])
    (entity,) = [e for e in in_dxf().modelspace().query("LWPOLYLINE") if math.dist(e.get_points("xy")[0], at) < 0.01]
    tags = in_dxf().linetypes.get(entity.dxf.linetype).pattern_tags.tags
    parts = PATTERNS.get(dash, (0.5, 3))
    wanted = [(part if n % 2 == 0 else -part) * width_mm for n, part in enumerate(parts)]
    assert [tag.value for tag in tags if tag.code == 49] == pytest.approx(wanted)
    assert [tag.value for tag in tags if tag.code == 40] == pytest.approx([sum(parts) * width_mm])
    assert entity.dxf.lineweight == round(width_mm * 100)
    assert in_dxf().header["$LTSCALE"] == 1.0


@DXF
@pytest.mark.parametrize("role", ROLES)
def test_dxf_colours_are_those_of_the_picture(role: str) -> None:
    at = (ROLES[role].points[0][0], HEIGHT_MM - ROLES[role].points[0][1])
    for scheme in ("monochrome", "restrained"):
        lines = in_dxf(scheme).modelspace().query("LWPOLYLINE")
        (entity,) = [e for e in lines if math.dist(e.get_points("xy")[0], at) < 0.01]
        told = entity.dxf.get("true_color", 0)
        assert (told >> 16, told >> 8 & 255, told & 255) == seen("png", role, scheme)
