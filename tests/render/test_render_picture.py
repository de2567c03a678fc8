"""A logo on the sheet: the same ink in SVG, PDF and PNG, named for screen readers, and nothing else of its file."""

from __future__ import annotations

import base64
import re
import shutil
import subprocess
import xml.etree.ElementTree as ElementTree
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pytest
from drawn_sheets import sheet

from sld.picture import Picture, read
from sld.render import inline_svg, pdf, png, svg, text
from sld.sheet.sheet import Group, PlacedPicture, Sheet
from sld.symbols.stroke import Box, Text

image = pytest.importorskip("PIL.Image", reason="needs Pillow")
SVG = "{http://www.w3.org/2000/svg}"
BOX = Box(240.0, 100.0, 280.0, 120.0)
ORANGE, BLUE = (0xC9, 0x52, 0x0A), (0, 0x3C, 0xA0)

DRAWN = read(
    b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><path d="M0 0H40V20H0Z" fill="#c9520a"/>'
    b'<path fill-rule="evenodd" d="M10 5H30V15H10Z M15 8H25V12H15Z" fill="#003ca0"/></svg>'
)


def _dots() -> Picture:
    picture = image.new("RGB", (80, 40), ORANGE)
    picture.paste(BLUE, (20, 10, 60, 30))
    picture.paste(ORANGE, (30, 16, 50, 24))
    out = BytesIO()
    picture.save(out, "PNG", pnginfo=None)
    return read(out.getvalue())


PICTURES = {"svg": DRAWN, "png": _dots()}


def with_picture(name: str) -> Sheet:
    return replace(sheet(), pictures=(PlacedPicture(BOX, PICTURES[name], "Logo of A & B"),))


def at(picture: object, x_mm: float, y_mm: float, dots_per_inch: float) -> tuple[int, ...]:
    return picture.getpixel((round(x_mm / 25.4 * dots_per_inch), round(y_mm / 25.4 * dots_per_inch)))  # type: ignore[attr-defined,no-any-return]


PLACES = [(242.0, 102.0, ORANGE), (252.0, 110.0, BLUE), (260.0, 110.0, ORANGE), (285.0, 110.0, (255, 255, 255))]


def is_there(picture: object, dots_per_inch: float) -> None:
    for x_mm, y_mm, colour in PLACES:
        found = at(picture, x_mm, y_mm, dots_per_inch)
        assert max(abs(a - b) for a, b in zip(found, colour, strict=True)) <= 3, (x_mm, y_mm, found)


@pytest.mark.parametrize("name", PICTURES)
def test_png(name: str) -> None:
    is_there(image.open(BytesIO(png(with_picture(name), 100))).convert("RGB"), 100)


@pytest.mark.parametrize("name", PICTURES)
def test_pdf(name: str, tmp_path: Path) -> None:
    program = shutil.which("pdftoppm")
    if program is None:
        pytest.skip("needs pdftoppm (poppler-utils)")
    (tmp_path / "sheet.pdf").write_bytes(pdf((with_picture(name),)))
    subprocess.run([program, "-r", "100", "-png", "-singlefile", "sheet.pdf", "page"], cwd=tmp_path, check=True)
    is_there(image.open(tmp_path / "page.png").convert("RGB"), 100)


@pytest.mark.parametrize("name", PICTURES)
def test_svg(name: str, tmp_path: Path) -> None:
    program = shutil.which("rsvg-convert")
    if program is None:
        pytest.skip("needs rsvg-convert (librsvg2-bin)")
    (tmp_path / "sheet.svg").write_bytes(svg(with_picture(name)))
    command = [program, "--dpi-x=100", "--dpi-y=100", str(tmp_path / "sheet.svg")]
    drawn = subprocess.run(command, capture_output=True, check=True).stdout
    is_there(image.open(BytesIO(drawn)).convert("RGB"), 100)


@pytest.mark.parametrize("name", PICTURES)
def test_it_is_named_for_screen_readers(name: str) -> None:
    root = ElementTree.fromstring(svg(with_picture(name)))
    (group,) = root.findall(f"{SVG}g[@class='picture']")
    assert (group.get("role"), group.get("aria-label")) == ("img", "Logo of A & B")
    assert [title.text for title in group.findall(f"{SVG}title")] == ["Logo of A & B"]


@pytest.mark.parametrize(("name", "size"), [("png", (80, 40)), ("svg", (756, 378))])
def test_the_dots_in_the_svg_are_those_that_were_read(name: str, size: tuple[int, int]) -> None:
    """Of an SVG 378 rows: 600 dots per inch on 16 mm."""
    (content,) = re.findall(r'href="data:image/png;base64,([^"]*)"', svg(with_picture(name)).decode())
    found = image.open(BytesIO(base64.b64decode(content)))
    assert found.size == size
    assert found.info == {}
    assert found.tobytes() == PICTURES[name].rgb


@pytest.mark.parametrize("name", PICTURES)
def test_the_same_bytes_again(name: str) -> None:
    assert svg(with_picture(name)) == svg(with_picture(name))
    assert pdf((with_picture(name),)) == pdf((with_picture(name),))


def test_the_text_form_says_where_it_is() -> None:
    assert text(with_picture("png")).splitlines()[-1] == "picture 240.00,100.00 280.00,120.00 'Logo of A & B'"


def test_several_pictures_of_a_page_of_several_sheets_have_ids_of_their_own() -> None:
    drawn = with_picture("svg")
    page = "".join(inline_svg(replace(drawn, number=n, pictures=drawn.pictures * 2)) for n in (1, 2))
    ids = re.findall(r'"(s[0-9]+-picture-[0-9]+)[^"]*"', page)
    assert set(ids) == {"s1-picture-1", "s1-picture-2", "s2-picture-1", "s2-picture-2"}


@pytest.mark.parametrize("dots_per_inch", [72.0, 100.0, 150.0])
@pytest.mark.parametrize("letters", ["HHHH", "EEEE"])
def test_letters_have_as_much_ink_in_few_dots_as_in_many(letters: str, dots_per_inch: float) -> None:
    """None is drawn bolder, or moved, to fill whole dots: at 100 to an inch H would have 7 % more."""
    drawn = Sheet(60.0, 20.0, 1, "T", "", "en", (Group("l", "label", (Text((5.0, 10.0), letters, 2.5),)),))

    def ink_mm2(dots_per_inch: float) -> float:
        grey = image.open(BytesIO(png(drawn, dots_per_inch))).convert("L").tobytes()
        return float(sum(255 - value for value in grey)) / 255 * (25.4 / dots_per_inch) ** 2

    assert ink_mm2(dots_per_inch) == pytest.approx(ink_mm2(600.0), rel=0.015)
