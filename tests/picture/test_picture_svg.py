"""SVG files reduced to shapes: points worked by hand, the picture as a second renderer draws it, refusals by name."""

from __future__ import annotations

import math
import shutil
import subprocess
from io import BytesIO
from pathlib import Path

import pytest

from sld.picture import BadPicture, Shapes, read
from sld.picture.colour import colour
from sld.render.picture import svg_picture
from sld.sheet.sheet import PlacedPicture
from sld.symbols.stroke import Box

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 100">'


def shapes(body: str) -> Shapes:
    found = read(f"{HEAD}{body}</svg>".encode())
    assert isinstance(found, Shapes)
    return found


def corners(body: str) -> list[tuple[float, float]]:
    """The points of the only shape, with its own box moved back to where it was by a frame around it."""
    frame = '<path d="M0 0H200V100H0Z" fill="#ffffff"/>'
    return [point for _, points in shapes(frame + body).shapes[1].path for point in points]


@pytest.mark.parametrize(
    ("body", "points"),
    [
        ('<rect x="10" y="20" width="30" height="40"/>', [(10, 20), (40, 20), (40, 60), (10, 60)]),
        ('<polygon points="1,2 3,4 5,2"/>', [(1, 2), (3, 4), (5, 2)]),
        ('<g transform="translate(10)"><path d="M1 2l3 4h5v-6z"/></g>', [(11, 2), (14, 6), (19, 6), (19, 0)]),
        ('<path transform="rotate(90 10 10)" d="M20 10L30 10L30 20Z"/>', [(10, 20), (10, 30), (0, 30)]),
        ('<path transform="scale(2 3)" d="M1 1L2 1L2 2Z"/>', [(2, 3), (4, 3), (4, 6)]),
        ('<path transform="matrix(1 2 3 4 5 6)" d="M1 1L2 1L2 2Z"/>', [(9, 12), (10, 14), (13, 18)]),
        ('<path transform="skewX(45)" d="M1 1L2 1L2 2Z"/>', [(2, 1), (3, 1), (4, 2)]),
        # a quadratic curve is the cubic one whose control points lie two thirds of the way (SVG 1.1, F.6 and 8.3.7)
        ('<path d="M0 0Q30 60 60 0"/>', [(0, 0), (20, 40), (40, 40), (60, 0)]),
    ],
)
def test_points(body: str, points: list[tuple[float, float]]) -> None:
    found = corners(body)
    assert found[: len(points)] == [pytest.approx(point) for point in points]
    assert found[len(points) :] in ([], [pytest.approx(points[0])])


@pytest.mark.parametrize("body", ['<circle cx="50" cy="40" r="20"/>', '<ellipse cx="50" cy="40" rx="20" ry="20"/>'])
def test_a_circle_is_round(body: str) -> None:
    path = shapes(f'<path d="M0 0H200V100H0Z" fill="#ffffff"/>{body}').shapes[1].path
    ends = [points[-1] for _, points in path if points]
    assert all(math.dist(end, (50, 40)) == pytest.approx(20, abs=0.01) for end in ends)
    assert len(ends) >= 4


@pytest.mark.parametrize(
    ("text", "found"),
    [("#abc", "#aabbcc"), (" #A1b2C3 ", "#a1b2c3"), ("rgb(1, 2,255)", "#0102ff"), ("navy", "#000080"), ("none", ""),
     ("currentColor", "#000000"), ("transparent", "")],
)  # fmt: skip
def test_colours(text: str, found: str) -> None:
    """The names and forms of CSS 2.1, 4.3.6."""
    assert colour(text) == found


def test_what_is_around_is_inherited_and_style_goes_before_attributes() -> None:
    body = '<g fill="red" stroke="blue" stroke-width="3"><path d="M0 0H9V9Z" fill="lime" style="fill:#123456"/></g>'
    (shape,) = shapes(body).shapes
    assert (shape.fill, shape.line, shape.line_width_px) == ("#123456", "#0000ff", 3.0)


def test_the_box_is_that_of_the_ink() -> None:
    found = shapes('<rect x="50" y="20" width="60" height="30" stroke="#000" stroke-width="4" fill="none"/>')
    assert (found.width_px, found.height_px) == pytest.approx((64, 34))


REFUSED = {
    "script": "<script>alert(1)</script>",
    "image": '<image href="http://example.org/x.png" width="9" height="9"/>',
    "use": '<use href="#a"/>',
    "text": "<text>Hi</text>",
    "style": "<style>path{fill:red}</style>",
    "foreignObject": "<foreignObject/>",
    "a": '<a href="http://example.org"><path d="M0 0H9V9Z"/></a>',
    "clip-path": '<path d="M0 0H9V9Z" clip-path="url(#c)"/>',
    "opacity": '<path d="M0 0H9V9Z" opacity="0.5"/>',
    "colour": '<path d="M0 0H9V9Z" fill="url(#gradient)"/>',
    "path": '<path d="M0 0 nonsense"/>',
    "transform": '<path d="M0 0H9V9Z" transform="turn(3)"/>',
    "shows nothing": "<defs/>",
    "nested": "<g>" * 60 + '<path d="M0 0H9V9Z"/>' + "</g>" * 60,
    "elements": "<g/>" * 3_001,
    "segments": '<path d="M0 0' + "h1v1" * 10_001 + '"/>',
    "proper extent": '<path d="M0 0H9e9V9Z"/>',
    "stroke-width": '<path d="M0 0H9V9Z" stroke="#000" stroke-width="2%"/>',
}


@pytest.mark.parametrize("what", REFUSED)
def test_what_cannot_be_taken_is_refused_by_its_name(what: str) -> None:
    with pytest.raises(BadPicture, match=what) as told:
        shapes(REFUSED[what])
    assert told.value.remedy


@pytest.mark.parametrize(
    ("content", "why"),
    [
        (b'<!DOCTYPE svg [<!ENTITY a "b">]><svg xmlns="http://www.w3.org/2000/svg"/>', "entities"),
        (b"<svg", "well-formed"),
        ("<svg>é</svg>".encode("latin-1"), "UTF-8"),
        (b"<html><svg/></html>", "not an SVG"),
    ],
)
def test_what_is_no_plain_svg(content: bytes, why: str) -> None:
    with pytest.raises(BadPicture, match=why):
        read(content)


LIVELY = """<g transform="translate(10 5) rotate(5)" onclick="alert(1)"><circle cx="35" cy="35" r="30" fill="#c9520a"/>
<path d="M5 60 Q35 10 65 60 Z" style="fill:#fff;stroke:navy;stroke-width:2"/><title>x</title>
<rect x="80" y="20" width="90" height="30" rx="8" fill="none" stroke="rgb(0,100,50)" stroke-width="4"/>
<path fill-rule="evenodd" d="M90 25h20v20h-20z M95 30h10v10h-10z"/>
<path d="M120 60 a20 10 30 0 1 30 10 s 5 5 10 -10 t 3 3" fill="teal"/></g>"""


def test_nothing_of_the_file_but_shapes_goes_on() -> None:
    lines = "".join(svg_picture(PlacedPicture(Box(0, 0, 50, 20), shapes(LIVELY), "Logo"), "picture-1"))
    assert "alert" not in lines
    assert "onclick" not in lines
    assert "rotate" not in lines


def test_a_second_renderer_draws_the_same_picture(tmp_path: Path) -> None:
    """The file itself and what was made of it, both drawn by rsvg-convert: dots differ at the edges of shapes only."""
    program, image = shutil.which("rsvg-convert"), pytest.importorskip("PIL.Image")
    if program is None:
        pytest.skip("needs rsvg-convert (librsvg2-bin)")
    frame = '<path d="M0 0H200V100H0Z" fill="#ffffff"/>'
    made = "".join(svg_picture(PlacedPicture(Box(0, 0, 200, 100), shapes(frame + LIVELY), "Logo"), "picture-1"))
    pictures = []
    for name, body in (("given", frame + LIVELY), ("made", made)):
        path = tmp_path / f"{name}.svg"
        path.write_text(f"{HEAD}{body}</svg>", encoding="utf-8")
        drawn = subprocess.run([program, "--width=800", str(path)], capture_output=True, check=True).stdout
        pictures.append(image.open(BytesIO(drawn)).convert("RGB").tobytes())
    one, other = pictures
    assert sum(value < 200 for value in one) > 50_000
    assert sum(abs(a - b) > 40 for a, b in zip(one, other, strict=True)) < 0.001 * len(one)
