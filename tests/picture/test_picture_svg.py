"""SVG files drawn: dots where they are by hand, the picture of a second renderer, refusals by name, nothing read."""

from __future__ import annotations

import builtins
import shutil
import socket
import subprocess
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from sld.picture import MAX_BYTES, BadPicture, Picture, read
from sld.picture.permitted import refuse_foreign

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 200 100">'
FRAME = '<path d="M0 0H200V100H0Z" fill="#ffffff"/>'
WHITE, BLACK, RED, BLUE = (255, 255, 255), (0, 0, 0), (255, 0, 0), (0, 0, 255)


def drawn(body: str) -> Picture:
    return read(f"{HEAD}{body}</svg>".encode())


def dot(picture: Picture, x: float, y: float) -> tuple[int, ...]:
    """The colour at a point of a page of 200 by 100 that the picture fills."""
    column, row = int(x / 200 * picture.columns_count), int(y / 100 * picture.rows_count)
    at = 3 * (row * picture.columns_count + column)
    return tuple(picture.rgb[at : at + 3])


@pytest.mark.parametrize(
    ("body", "inside", "outside"),
    [
        ('<rect x="10" y="20" width="30" height="40"/>', [(11, 21), (39, 59)], [(9, 21), (41, 59), (11, 61)]),
        ('<polygon points="10,20 30,40 50,20"/>', [(30, 38)], [(30, 42), (12, 24)]),
        ('<g transform="translate(10)"><path d="M10 20l30 40h50v-60z"/></g>', [(98, 50)], [(102, 50)]),
        ('<path transform="rotate(90 100 50)" d="M110 50L130 50L130 70Z"/>', [(98, 78)], [(102, 78), (98, 82)]),
        ('<path transform="scale(2 3)" d="M10 10L20 10L20 20Z"/>', [(39, 57)], [(41, 57), (38, 28)]),
        ('<path transform="matrix(1 0.5 0 2 5 6)" d="M10 10H20V20H10Z"/>', [(16, 32), (24, 50)], [(14, 32), (16, 30)]),
        ('<path transform="skewX(45)" d="M10 10L20 10L20 40Z"/>', [(31, 12)], [(18, 12)]),
        # the middle of a quadratic curve is halfway to its control point (SVG 1.1, 8.3.7)
        ('<path d="M0 0Q30 60 60 0"/>', [(30, 28)], [(30, 32)]),
        ('<circle cx="50" cy="40" r="20"/>', [(50, 22), (69, 40), (63, 53)], [(50, 18), (71, 40), (65, 55)]),
        ('<ellipse cx="50" cy="40" rx="40" ry="20"/>', [(88, 40), (50, 58)], [(92, 40), (50, 62)]),
        ('<path fill-rule="evenodd" d="M90 25h20v20h-20z M95 30h10v10h-10z"/>', [(92, 27)], [(100, 35), (88, 27)]),
        ('<rect x="10" y="10" width="80" height="80" rx="40"/>', [(50, 12)], [(14, 14)]),
        ('<defs><g id="a"><rect width="10" height="10"/></g></defs><use href="#a" x="50"/>', [(55, 5)], [(5, 5)]),
        ('<clipPath id="a"><rect width="9" height="9"/></clipPath><rect width="50" height="50" clip-path="url(#a)"/>',
         [(5, 5)], [(15, 5), (5, 15)]),
    ],
)  # fmt: skip
def test_shapes(body: str, inside: list[tuple[float, float]], outside: list[tuple[float, float]]) -> None:
    picture = drawn(FRAME + body)
    assert {dot(picture, *point) for point in inside} == {BLACK}
    assert {dot(picture, *point) for point in outside} == {WHITE}


@pytest.mark.parametrize(
    ("text", "found"),
    [("#abc", (0xAA, 0xBB, 0xCC)), ("#A1b2C3", (0xA1, 0xB2, 0xC3)), ("rgb(1, 2,255)", (1, 2, 255)),
     ("navy", (0, 0, 128)), ("none", WHITE), ("currentColor", BLACK), ("rgb(100%,0%,0%)", RED)],
)  # fmt: skip
def test_colours(text: str, found: tuple[int, ...]) -> None:
    """The names and forms of CSS 2.1, 4.3.6."""
    assert dot(drawn(f'{FRAME}<rect width="99" height="50" fill="{text}"/>'), 50, 25) == found


@pytest.mark.parametrize(
    ("body", "found"),
    [
        ('<g fill="red"><path d="M0 0H90V90H0Z" fill="lime" style="fill:#123456"/></g>', (0x12, 0x34, 0x56)),
        ('<g fill="red"><path d="M0 0H90V90H0Z"/></g>', RED),
        ('<style>.a{fill:blue}</style><path class="a" fill="red" d="M0 0H90V90H0Z"/>', BLUE),
        ('<g opacity="0.5"><path d="M0 0H90V90H0Z" fill="red"/></g>', (255, 127, 127)),
        ('<path d="M0 0H90V90H0Z" fill="red" fill-opacity="0"/>', WHITE),
    ],
)
def test_what_is_around_is_inherited_and_style_goes_before_attributes(body: str, found: tuple[int, ...]) -> None:
    assert dot(drawn(FRAME + body), 45, 45) == pytest.approx(found, abs=1)


def test_a_gradient_runs_from_end_to_end() -> None:
    stops = '<stop offset="0" stop-color="#f00"/><stop offset="1" stop-color="#00f"/>'
    gradient = f'<linearGradient id="a">{stops}</linearGradient><linearGradient id="b" xlink:href="#a"/>'
    picture = drawn(f'<defs>{gradient}</defs><rect width="200" height="100" fill="url(#b)"/>')
    assert dot(picture, 0, 50) == pytest.approx(RED, abs=2)
    assert dot(picture, 100, 50) == pytest.approx((127, 0, 127), abs=2)
    assert dot(picture, 199.9, 50) == pytest.approx(BLUE, abs=2)


@pytest.mark.parametrize(
    ("body", "width", "height"),
    [
        ('<rect x="50" y="20" width="60" height="30" stroke="#000" stroke-width="4" fill="none"/>', 64, 34),
        ('<g opacity="0.5"><rect x="90" y="40" width="20" height="5"/></g>', 20, 5),
        ('<circle cx="100" cy="50" r="2"/>', 4, 4),
        ('<rect width="2000" height="1000"/>', 200, 100),
    ],
)
def test_the_box_is_that_of_the_ink(body: str, width: float, height: float) -> None:
    """At most 600 dots per inch on 50 mm by 16 mm, and about as fine as that however small the ink is on its page."""
    found = drawn(body)
    assert found.aspect_factor == pytest.approx(width / height, rel=0.02)
    assert found.columns_count <= round(50 / 25.4 * 600)
    assert found.rows_count <= round(16 / 25.4 * 600)
    assert found.columns_count > 1100 or found.rows_count > 350


@pytest.mark.parametrize(
    "sizes",
    ['viewBox="0 0 80 40"', 'width="80" height="40"', 'width="60pt" height="30pt"', 'width="8cm" viewBox="0 0 80 40"',
     'width="100%" height="100%" viewBox="0,0,80,40"', 'viewBox="0 0 80 40" width="3in" height="1.5in"'],
)  # fmt: skip
def test_the_size_of_the_page_may_be_said_in_each_way(sizes: str) -> None:
    """60 pt are 80 px (CSS 2.1, 4.3.2: 72 pt and 96 px an inch)."""
    found = read(f'<svg xmlns="http://www.w3.org/2000/svg" {sizes}><rect width="80" height="40"/></svg>'.encode())
    assert found.aspect_factor == 2
    assert set(found.rgb) == {0}


def uses(levels: int, each: int) -> str:
    """Groups that show the next one several times over."""
    groups = [f'<g id="a{n}">{f"""<use href="#a{n + 1}"/>""" * each}</g>' for n in range(levels)]
    return f'<defs>{"".join(groups)}<rect id="a{levels}" width="9" height="9"/></defs><use href="#a0"/>'


REFUSED = {
    "script": "<script>alert(1)</script>",
    "image": '<image href="http://example.org/x.png" width="9" height="9"/>',
    "`image": '<defs><image href="file:///etc/hostname" width="9" height="9"/></defs>',
    "image`": '<image href="data:image/png;base64,AAAA" width="9" height="9"/>',
    "text": "<text>Hi</text>",
    "`text": '<x:a xmlns:x="u"><text>Hi</text></x:a>',
    "foreignObject": "<foreignObject/>",
    "a`": '<a href="http://example.org"><path d="M0 0H9V9Z"/></a>',
    "pattern": '<pattern id="a" width="9" height="9"/>',
    "animate": '<rect width="9" height="9"><animate attributeName="x" to="9" dur="1s"/></rect>',
    "`mask`": '<path d="M0 0H9V9Z" mask="url(#c)"/>',
    "`filter`": '<path d="M0 0H9V9Z" style="filter: url(#c)"/>',
    "`marker-end`": '<style>path{marker-end:url(#c)}</style><path d="M0 0H9V9Z"/>',
    "`stroke-dasharray`": '<path d="M0 0H90" stroke="red" stroke-dasharray="0.0000001"/>',
    "stroke-dasharray`": '<style>.a{stroke-dasharray:0.0000001}</style><path class="a" d="M0 0H90" stroke="red"/>',
    "file:///etc/hostname": '<use href="file:///etc/hostname#a"/>',
    "other.svg": '<use xlink:href="other.svg#a"/>',
    "http://example.org/#a": '<path d="M0 0H9V9Z" fill="url(http://example.org/#a)"/>',
    "http://example.org/#b": "<style>path{fill:url( 'http://example.org/#b' )}</style>",
    "@import": '<style>@import "file:///etc/hostname";</style><path d="M0 0H9V9Z"/>',
    "shows nothing": "<defs/>",
    "nothing": '<rect x="300" width="9" height="9"/>',
    "cannot be": '<path d="nonsense"/>',
    "cannot be drawn": '<rect width="9" height="9" opacity="half"/>',
    "nested": "<g>" * 60 + '<path d="M0 0H9V9Z"/>' + "</g>" * 60,
    "too deeply": "<g>" * 30_000 + "</g>" * 30_000,
    "elements": "<g/>" * 3_001,
    "too long a style sheet": f"<style>{'*{fill:red}' * 1_000}</style>",
    "refers to its own parts too often": uses(9, 10),
    "too long paths": f'<path d="M0 0{"h1v1h1v-1" * 40_000}"/>',
    "long paths": f'<path id="a" d="{"M0 0H9V9Z" * 400}"/>' + '<use href="#a"/>' * 120,
    "too long clip paths": f'<clipPath id="a"><path d="{"M0 0H9V9Z" * 3_000}"/></clipPath><path d="M0 0H9V9Z" '
    'clip-path="url(#a)"/>',
    "drawn": '<g id="a"><use href="#a"/><use href="#a"/></g>',
    "gradients": '<linearGradient id="a" href="#b"/><linearGradient id="b" href="#a"/>',
}


@pytest.mark.parametrize("what", REFUSED)
def test_what_cannot_be_taken_is_refused_by_its_name(what: str) -> None:
    with pytest.raises(BadPicture, match=what) as told:
        drawn('<rect width="9" height="9" fill="none"/>' + REFUSED[what])
    assert told.value.remedy


LAUGHS = "".join(f'<!ENTITY l{n} "{f"&l{n - 1};" * 10}">' for n in range(1, 10))
PLAIN = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">{}<rect width="9" height="9"/></svg>'


@pytest.mark.parametrize(
    ("content", "why"),
    [
        (f'<!DOCTYPE svg [<!ENTITY l0 "ha">{LAUGHS}]>{PLAIN.format("<desc>&l9;</desc>")}', "entities"),
        ('<!DOCTYPE svg [<!ENTITY a "b">]><svg xmlns="http://www.w3.org/2000/svg"/>', "entities"),
        (f'<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/hostname">]>{PLAIN.format("<desc>&a;</desc>")}', "entities"),
        (f'<!DOCTYPE svg [<!ENTITY % a SYSTEM "http://example.org/a.dtd"> %a;]>{PLAIN.format("")}', "entities"),
        ("<svg", "well-formed"),
        (f"{HEAD}{'<g><path d=' * 9}", "well-formed"),
        (PLAIN.format("")[:-9], "well-formed"),
        ('<?xml version="1.0" encoding="nonesuch"?><svg/>', "well-formed"),
        ("<html><svg/></html>", "not an SVG"),
        ('<svg xmlns="http://www.w3.org/2000/svg"><rect width="9" height="9"/></svg>', "how large"),
        ('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 0 9"><rect width="9" height="9"/></svg>', "how large"),
        ('<svg xmlns="http://www.w3.org/2000/svg" viewBox="a b c d"><rect width="9" height="9"/></svg>', "be drawn"),
        (PLAIN.format(f"<!--{'x' * MAX_BYTES}-->"), "larger than 500 kB"),
    ],
)  # fmt: skip
def test_what_is_no_plain_svg(content: str, why: str) -> None:
    with pytest.raises(BadPicture, match=why) as told:
        read(content.encode())
    assert told.value.remedy


@pytest.mark.parametrize("content", [b"<svg>\xe9</svg>", b"\x1f\x8b\x08\x08\0\0\0\0\0\x03<svg\0"])
def test_what_is_no_text(content: bytes) -> None:
    """Latin-1, and gzip with `<svg` as the name of the file that is packed."""
    with pytest.raises(BadPicture, match="UTF-8"):
        read(content)


@pytest.mark.parametrize(
    "before",
    [
        '<?xml version="1.0"?><!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" '
        '"http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">',
        '<!DOCTYPE svg SYSTEM "file:///etc/hostname">',
        '<?xml-stylesheet href="file:///etc/hostname" type="text/css"?>',
    ],
)
def test_what_stands_before_the_picture_is_not_followed(before: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Editors write the address of a document type into every file; nobody goes there."""
    drawn(FRAME)  # what the libraries load at first is loaded

    def asked(*_: object, **__: object) -> None:
        raise AssertionError("something was asked for")

    monkeypatch.setattr(builtins, "open", asked)
    monkeypatch.setattr(socket, "socket", asked)
    assert set(read((before + PLAIN.format("")).encode()).rgb) == {0}


def test_a_long_path_is_drawn() -> None:
    """A drawing traced from a photograph may have a path like this: saw teeth from edge to edge, row below row."""
    rows = "".join(f"M0 {y}" + "l1 1l1 -1" * 100 for y in range(90))
    assert drawn(f'<path d="{rows}"/>').aspect_factor == pytest.approx(200 / 90, rel=0.01)


def test_the_same_dots_again() -> None:
    assert drawn(LIVELY) == drawn(LIVELY)


LIVELY = """<g transform="translate(10 5) rotate(5)" onclick="alert(1)"><circle cx="35" cy="35" r="30" fill="#c9520a"/>
<path d="M5 60 Q35 10 65 60 Z" style="fill:#fff;stroke:navy;stroke-width:2"/><title>x</title>
<rect x="80" y="20" width="90" height="30" rx="8" fill="none" stroke="rgb(0,100,50)" stroke-width="4"/>
<path fill-rule="evenodd" d="M90 25h20v20h-20z M95 30h10v10h-10z"/>
<path d="M120 60 a20 10 30 0 1 30 10 s 5 5 10 -10 t 3 3" fill="teal"/></g>"""


def test_a_second_renderer_draws_the_same_picture(tmp_path: Path) -> None:
    """The file drawn by rsvg-convert in as many dots: they differ at the edges of shapes only."""
    program = shutil.which("rsvg-convert")
    if program is None:
        pytest.skip("needs rsvg-convert (librsvg2-bin)")
    ours, path = drawn(FRAME + LIVELY), tmp_path / "given.svg"
    path.write_text(f"{HEAD}{FRAME}{LIVELY}</svg>", encoding="utf-8")
    command = [program, f"--width={ours.columns_count}", f"--height={ours.rows_count}", str(path)]
    theirs = Image.open(BytesIO(subprocess.run(command, capture_output=True, check=True).stdout)).convert("RGB")
    assert theirs.size == (ours.columns_count, ours.rows_count)
    one, other = ours.rgb, theirs.tobytes()
    assert sum(value < 200 for value in one) > 50_000
    assert sum(abs(a - b) > 40 for a, b in zip(one, other, strict=True)) < 0.001 * len(one)


MANY = '<path class="a" d="M0 0H9V9Z"/>' * 2_900


@pytest.mark.parametrize(
    "selectors",
    [
        ",".join([".a"] * 3_000),
        ".a{fill:red}" * 800,
        ",".join(["z~path"] * 100),
        "z g g g g path",
        "path:nth-last-of-type(3)",
    ],
)
def test_selectors_times_elements_are_bounded(selectors: str) -> None:
    """Each of these takes seconds to minutes to draw, and no drawing program writes them."""
    style = selectors if selectors.endswith("}") else f"{selectors}{{fill:red}}"
    with pytest.raises(BadPicture, match="too many selectors"):
        refuse_foreign(f'<svg xmlns="http://www.w3.org/2000/svg"><style>{style}</style>{MANY}</svg>'.encode())


def test_the_style_sheets_of_drawing_programs_are_taken() -> None:
    """A class for each colour, with a comment, also for what is inside a group."""
    style = "/* a, b, c: made by hand, over and over */" + "".join(f".st{n}{{fill:#00{n:02}ff;}}" for n in range(60))
    refuse_foreign(
        f'<svg xmlns="http://www.w3.org/2000/svg"><style>{style} g .b, g > .c {{fill:red}}</style>{MANY}</svg>'.encode()
    )
