"""Other renderers' pictures of our SVG against our PNG and our PDF: the same ink in the same places.

CairoSVG is always there; rsvg-convert, which shares no code with our own renderer, where it is installed.

The measure: of the dark pixels of one picture at 100 dots per inch, the part that has ink of the other, dark or light,
within so many pixels (of 0.25 mm), both ways round. What is missing leaves room for smoothing at the edges of strokes;
the check of the measure shows that a table moved by a millimetre, or one that is missing, goes below each bound.
librsvg rounds each letter's advance, at any resolution, which is up to 0.4 mm at the end of a long line: it is looked
at within two pixels, CairoSVG within one.
"""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import cairosvg
import pytest

from sld import run
from sld.render import pdf, png, svg
from sld.render.font import cairo_with_font
from sld.sheet.ink import moved
from sld.sheet.sheet import Sheet
from sld.symbols.typeface import FONT_FILE

ROOT = Path(__file__).parents[2]
DOTS_PER_INCH = 100
DARK, INK = 128, 224
LEAST_AGREEMENT = {1: 0.99, 2: 0.995}
"""By how many pixels ink may lie beside that of the other."""
FINER = 4

FONTS = """<?xml version="1.0"?><fontconfig><dir>{}</dir><cachedir>{}</cachedir></fontconfig>"""
"""librsvg reads no font from inside an SVG: it is given the same one by fontconfig."""


@cache
def sheets() -> tuple[Sheet, ...]:
    return run.draw(run.check(ROOT / "specs" / "village-hall.yaml")).sheets


def grey(content: bytes) -> Any:
    """Return a picture in grey, on white where it is transparent."""
    image = pytest.importorskip("PIL.Image")
    picture = image.open(BytesIO(content)).convert("RGBA")
    paper = image.new("RGBA", picture.size, "white")
    return image.alpha_composite(paper, picture).convert("L")


def part_within(one: Any, other: Any, pixels: int) -> float:
    """Return the part of the dark pixels of one picture that lies within so many pixels of ink of the other."""
    chops, filters = pytest.importorskip("PIL.ImageChops"), pytest.importorskip("PIL.ImageFilter")
    dark = one.point(lambda value: 255 if value < DARK else 0)
    ink = other.point(lambda value: 255 if value < INK else 0).filter(filters.MaxFilter(2 * pixels + 1))
    return float(chops.multiply(dark, ink).histogram()[255] / dark.histogram()[255])


def agreement(one: Any, other: Any, pixels: int) -> float:
    return min(part_within(one, other, pixels), part_within(other, one, pixels))


def by_rsvg(sheet: Sheet, folder: Path) -> bytes:
    program = shutil.which("rsvg-convert")
    if program is None:
        pytest.skip("needs rsvg-convert (librsvg2-bin)")
    fonts, file = folder / "fonts.conf", folder / "sheet.svg"
    fonts.write_text(FONTS.format(FONT_FILE.parent, folder / "cache"), encoding="utf-8")
    file.write_bytes(svg(sheet))
    command = [program, f"--dpi-x={DOTS_PER_INCH}", f"--dpi-y={DOTS_PER_INCH}", "--background-color=white", str(file)]
    return subprocess.run(command, env={"FONTCONFIG_FILE": str(fonts)}, capture_output=True, check=True).stdout


def by_cairosvg(sheet: Sheet, _: Path) -> bytes:
    """Return a sheet as CairoSVG draws it FINER times as large, made smaller again.

    It sets letter by letter and rounds each advance to whole dots; in a larger picture the rounding is as much smaller.
    """
    cairo_with_font()  # like rsvg-convert it reads no font from inside an SVG
    drawn = grey(cairosvg.svg2png(svg(sheet), dpi=FINER * DOTS_PER_INCH, background_color="white"))
    out = BytesIO()
    drawn.reduce(FINER).save(out, "PNG", compress_level=0)
    return out.getvalue()


def by_poppler(sheet: Sheet, folder: Path) -> bytes:
    program = shutil.which("pdftoppm")
    if program is None:
        pytest.skip("needs pdftoppm (poppler-utils)")
    (folder / "sheet.pdf").write_bytes(pdf((sheet,)))
    page = folder / "page"
    command = [program, "-r", str(DOTS_PER_INCH), "-png", "-singlefile", str(folder / "sheet.pdf"), str(page)]
    subprocess.run(command, capture_output=True, check=True)
    return page.with_suffix(".png").read_bytes()


@cache
def picture(draw: Callable[[Sheet, Path], bytes], number: int) -> Any:
    """Return a sheet as one of the renderers draws it, in grey; each is drawn once."""
    with TemporaryDirectory() as folder:
        return grey(draw(sheets()[number], Path(folder)))


def by_ourselves(sheet: Sheet, _: Path) -> bytes:
    return png(sheet, DOTS_PER_INCH)


@pytest.mark.parametrize("own", [by_ourselves, by_poppler])
@pytest.mark.parametrize(
    ("draw", "pixels", "number"),
    [
        *((by_rsvg, 2, number) for number in range(2)),
        (by_cairosvg, 1, 1),
        pytest.param(by_cairosvg, 1, 0, marks=pytest.mark.whole),
    ],
)
def test_the_svg_by_another_renderer_is_our_png_and_our_pdf(
    own: Callable[[Sheet, Path], bytes], draw: Callable[[Sheet, Path], bytes], pixels: int, number: int
) -> None:
    ours, theirs = picture(own, number), picture(draw, number)
    assert ours.size == theirs.size
    assert agreement(ours, theirs, pixels) >= LEAST_AGREEMENT[pixels]


@pytest.mark.parametrize("change", ["moved", "missing"])
def test_the_measure_sees_a_table_that_is(change: str) -> None:
    drawn = sheets()[1]
    tables = [n for n, group in enumerate(drawn.groups) if group.layer == "table"]
    place = max(tables, key=lambda n: len(drawn.groups[n].strokes))
    group = drawn.groups[place]
    strokes = tuple(moved(stroke, 1.0, 0.0) for stroke in group.strokes) if change == "moved" else ()
    spoilt = replace(drawn, groups=(*drawn.groups[:place], replace(group, strokes=strokes), *drawn.groups[place + 1 :]))
    ours, theirs = picture(by_ourselves, 1), grey(png(spoilt, DOTS_PER_INCH))
    for pixels, least in LEAST_AGREEMENT.items():
        assert agreement(ours, ours, pixels) == 1.0
        assert agreement(theirs, ours, pixels) < least
