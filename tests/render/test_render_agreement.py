"""Other renderers' pictures of our SVG against our PNG and our PDF: the same ink in the same places.

CairoSVG is always there; rsvg-convert, which shares no code with our own renderer, where it is installed.

The measure: of the dark pixels of one picture at 100 dots per inch, the part that has ink of the other, dark or light,
within one pixel (0.25 mm), both ways round. The bound of 99 % leaves room for smoothing at the edges of strokes; the
check of the measure shows that a table moved by a millimetre, or one that is missing, goes below it.
"""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from io import BytesIO
from pathlib import Path
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
LEAST_AGREEMENT = 0.99
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


def part_within(one: Any, other: Any) -> float:
    """Return the part of the dark pixels of one picture that lies within a pixel of ink of the other."""
    chops, filters = pytest.importorskip("PIL.ImageChops"), pytest.importorskip("PIL.ImageFilter")
    dark = one.point(lambda value: 255 if value < DARK else 0)
    ink = other.point(lambda value: 255 if value < INK else 0).filter(filters.MaxFilter(3))
    return float(chops.multiply(dark, ink).histogram()[255] / dark.histogram()[255])


def agreement(one: Any, other: Any) -> float:
    return min(part_within(one, other), part_within(other, one))


def by_rsvg(sheet: Sheet, folder: Path) -> bytes:
    program = shutil.which("rsvg-convert")
    if program is None:
        pytest.skip("needs rsvg-convert (librsvg2-bin)")
    fonts, file = folder / "fonts.conf", folder / "sheet.svg"
    fonts.write_text(FONTS.format(FONT_FILE.parent, folder / "cache"), encoding="utf-8")
    file.write_bytes(svg(sheet))
    command = [program, f"--dpi-x={DOTS_PER_INCH}", f"--dpi-y={DOTS_PER_INCH}", "--background-color=white", str(file)]
    return subprocess.run(command, env={"FONTCONFIG_FILE": str(fonts)}, capture_output=True, check=True).stdout


@cache
def reduced(content: bytes) -> bytes:
    """Return an SVG as CairoSVG draws it FINER times as large, made smaller again.

    It sets letter by letter and rounds each advance to whole dots; in a larger picture the rounding is as much smaller.
    """
    drawn = grey(cairosvg.svg2png(content, dpi=FINER * DOTS_PER_INCH, background_color="white"))
    out = BytesIO()
    drawn.reduce(FINER).save(out, "PNG")
    return out.getvalue()


def by_cairosvg(sheet: Sheet, _: Path) -> bytes:
    cairo_with_font()  # like rsvg-convert it reads no font from inside an SVG
    return reduced(svg(sheet))


def by_poppler(sheet: Sheet, folder: Path) -> bytes:
    program = shutil.which("pdftoppm")
    if program is None:
        pytest.skip("needs pdftoppm (poppler-utils)")
    (folder / "sheet.pdf").write_bytes(pdf((sheet,)))
    page = folder / "page"
    command = [program, "-r", str(DOTS_PER_INCH), "-png", "-singlefile", str(folder / "sheet.pdf"), str(page)]
    subprocess.run(command, capture_output=True, check=True)
    return page.with_suffix(".png").read_bytes()


BOUNDS = [
    (by_rsvg, 0, LEAST_AGREEMENT),
    (by_rsvg, 1, 0.96),
    (by_rsvg, 2, 0.96),
    *((by_cairosvg, number, LEAST_AGREEMENT) for number in range(3)),
]
"""By sheet. Tables and notes have long lines: librsvg rounds each letter's advance, up to 0.4 mm in 100 mm."""


@pytest.mark.parametrize(("draw", "number", "least"), BOUNDS)
def test_the_svg_by_another_renderer_is_our_png(
    draw: Callable[[Sheet, Path], bytes], number: int, least: float, tmp_path: Path
) -> None:
    ours, theirs = (grey(each) for each in (png(sheets()[number], DOTS_PER_INCH), draw(sheets()[number], tmp_path)))
    assert ours.size == theirs.size
    assert agreement(ours, theirs) >= least


@pytest.mark.parametrize(("draw", "number", "least"), BOUNDS)
def test_the_svg_by_another_renderer_is_our_pdf(
    draw: Callable[[Sheet, Path], bytes], number: int, least: float, tmp_path: Path
) -> None:
    ours, theirs = (grey(each(sheets()[number], tmp_path)) for each in (by_poppler, draw))
    assert ours.size == theirs.size
    assert agreement(ours, theirs) >= least


@pytest.mark.parametrize("change", ["moved", "missing"])
def test_the_measure_sees_a_table_that_is(change: str) -> None:
    drawn = sheets()[1]
    tables = [n for n, group in enumerate(drawn.groups) if group.layer == "table"]
    place = max(tables, key=lambda n: len(drawn.groups[n].strokes))
    group = drawn.groups[place]
    strokes = tuple(moved(stroke, 1.0, 0.0) for stroke in group.strokes) if change == "moved" else ()
    spoilt = replace(drawn, groups=(*drawn.groups[:place], replace(group, strokes=strokes), *drawn.groups[place + 1 :]))
    ours = grey(png(drawn, DOTS_PER_INCH))
    assert agreement(ours, ours) == 1.0
    assert agreement(grey(png(spoilt, DOTS_PER_INCH)), ours) < LEAST_AGREEMENT
