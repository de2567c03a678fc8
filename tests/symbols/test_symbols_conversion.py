"""From schemdraw segments to strokes: scale, axis, arcs, curves, texts; and the elements in a schemdraw drawing."""

from __future__ import annotations

import math

import pytest
import schemdraw
from fontTools.pens.boundsPen import BoundsPen
from schemdraw import segments

from sld.symbols import registry
from sld.symbols.catalogue import names
from sld.symbols.conversion import stroke_of
from sld.symbols.element import INK, Graphic
from sld.symbols.extents import extents
from sld.symbols.stroke import Arc, Circle, Curve, Fill, Polyline, Text
from sld.symbols.typeface import text_width_mm


def test_line_is_scaled_and_turned_over() -> None:
    stroke = stroke_of(segments.Segment([(0, 0), (1, 2), (-1, 0.5)]))
    assert stroke == Polyline(((0.0, 0.0), (2.5, -5.0), (-2.5, -1.25)))


def test_filled_shapes() -> None:
    assert stroke_of(segments.SegmentCircle((1, -1), 0.2, fill=INK)) == Circle((2.5, 2.5), 0.5, fill=Fill.INK)
    polygon = stroke_of(segments.SegmentPoly([(0, 0), (1, 0), (0, 1)]))
    assert isinstance(polygon, Polyline)
    assert polygon.closed
    assert polygon.fill is Fill.NONE


@pytest.mark.parametrize(
    ("theta1", "theta2", "through"),
    [
        (0, 90, 45),
        (90, 270, 180),
        (-30, 30, 0),
        (300, 20, 340),
        (0, 360, 123),
        (35, -35, 180),  # schemdraw's default: from 35 degrees counter-clockwise to -35
    ],
)
def test_arc_runs_through_the_same_points(theta1: float, theta2: float, through: float) -> None:
    stroke = stroke_of(segments.SegmentArc((1, 1), 4, 2, theta1=theta1, theta2=theta2))
    assert isinstance(stroke, Arc)
    assert (stroke.radius_x_mm, stroke.radius_y_mm) == (5.0, 2.5)
    assert stroke.end_deg > stroke.start_deg

    def passes(angle: float) -> bool:  # counter-clockwise with y up is clockwise on the page, so the angle is negated
        return (-angle - stroke.start_deg) % 360 <= stroke.end_deg - stroke.start_deg + 1e-9

    assert passes(theta1 + 0.01 if theta1 % 360 != theta2 % 360 else theta1)
    assert passes(through)
    if theta1 % 360 != theta2 % 360:
        assert not passes(through + 180)


def test_quadratic_curve_becomes_the_same_cubic() -> None:
    stroke = stroke_of(segments.SegmentBezier([(0, 0), (1, 2), (2, 0)]))
    assert isinstance(stroke, Curve)
    box = BoundsPen(None)  # fontTools finds the exact bounds of a quadratic
    box.moveTo((0, 0))
    box.qCurveTo((2.5, -5.0), (5.0, 0))
    left, top, right, bottom = box.bounds
    found = extents([stroke])
    assert (found.left_mm, found.top_mm, found.right_mm, found.bottom_mm) == pytest.approx(
        (left, top, right, bottom), abs=0.001
    )
    assert stroke.points[0] == (0.0, 0.0)
    assert stroke.points[-1] == (5.0, 0.0)


@pytest.mark.parametrize(("align", "share"), [("left", 0.0), ("center", 0.5)])
@pytest.mark.parametrize("height_mm", [1.8, 2.5])
def test_text_starts_where_its_measured_width_puts_it(align: str, share: float, height_mm: float) -> None:
    graphic = Graphic()
    graphic.add_text("kWh", 2.0, 1.0, height_mm=height_mm, align=align)
    stroke = stroke_of(graphic.segments[0])
    assert isinstance(stroke, Text)
    assert stroke.height_mm == height_mm
    assert stroke.at[0] == pytest.approx(5.0 - share * text_width_mm("kWh", height_mm), abs=0.001)
    assert stroke.at[1] == pytest.approx(-2.5 + height_mm / 2, abs=0.001)  # capitals centred on y


@pytest.mark.parametrize(
    "segment",
    [
        segments.SegmentArc((0, 0), 1, 2, angle=30),
        segments.SegmentText((0, 0), "x", align=("center", "center")),
        segments.SegmentText((0, 0), "x", align=("left", "base"), rotation=90),
        segments.SegmentPath([(0, 0), "L", (1, 1)]),
    ],
    ids=["tilted arc", "text off its baseline", "turned text", "path"],
)
def test_what_no_stroke_can_show_is_refused(segment: object) -> None:
    with pytest.raises(TypeError):
        stroke_of(segment)


@pytest.mark.parametrize("half_wave_mm", [1.125, 1.5])
def test_sign_of_alternating_current_is_a_sine(half_wave_mm: float) -> None:
    from sld.symbols.parts import ac_sign

    length_m = 2 * half_wave_mm / 2.5
    graphic = Graphic()
    ac_sign(graphic, 0.0, 0.0, length_m)
    amplitude = 0.25 * 2.5 * length_m / 1.2
    for segment in graphic.segments:
        stroke = stroke_of(segment)
        assert isinstance(stroke, Curve)
        p = stroke.points
        for i in range(21):
            t, u = i / 20, 1 - i / 20
            weights = (u**3, 3 * u * u * t, 3 * u * t * t, t**3)
            x, y = (sum(w * q[axis] for w, q in zip(weights, p, strict=True)) for axis in (0, 1))
            assert y == pytest.approx(-amplitude * math.sin(math.pi * x / half_wave_mm), abs=0.01 * amplitude)


def test_a_name_is_entered_once() -> None:
    names()
    with pytest.raises(ValueError, match="entered twice"):
        registry.graphic("fuse", "Fuse", "nowhere")
    with pytest.raises(ValueError, match="unknown symbol family"):
        registry.graphic("fuse", "Fuse", "nowhere", family="XYZ")


def test_all_elements_can_be_placed_in_a_schemdraw_drawing() -> None:
    names()
    drawing = schemdraw.Drawing(canvas="svg", show=False)
    for place, entry in enumerate(registry.entries("IEC").values()):
        drawing.add(entry.draw(**dict(entry.variant), at=(12 * (place % 8), -8 * (place // 8))))
    svg = drawing.get_imagedata("svg").decode()
    assert svg.count("kWh") == 3
