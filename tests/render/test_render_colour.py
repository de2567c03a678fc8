"""Colour: readable on white by the measure of WCAG 2.1, and telling nothing that width and pattern do not tell."""

from __future__ import annotations

import io
import re
import shutil
import subprocess
from colorsys import rgb_to_hsv
from dataclasses import replace
from itertools import combinations
from pathlib import Path
from typing import Any

import pytest

from sld import run
from sld.layout.diagram.diagram import LineKind, Medium
from sld.render import pdf, svg
from sld.render.colour import SCHEMES, fractions, ink
from sld.sheet.conductor import DATA_LINES, LINES, conductor
from sld.sheet.sheet import Sheet
from sld.symbols.stroke import Arc, Dash, Text

ROOT = Path(__file__).parents[2]
COLOURS = [(scheme, role, colour) for scheme, roles in SCHEMES.items() for role, colour in roles.items()]
LEAST_CONTRAST = 4.5
"""WCAG 2.1, success criterion 1.4.3 (level AA), https://www.w3.org/TR/WCAG21/#contrast-minimum."""


def luminance(colour: str) -> float:
    """Relative luminance of sRGB, https://www.w3.org/TR/WCAG21/#dfn-relative-luminance."""
    red, green, blue = (c / 12.92 if c <= 0.03928 else ((c + 0.055) / 1.055) ** 2.4 for c in fractions(colour))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def on_white(colour: str) -> float:
    """Contrast ratio, https://www.w3.org/TR/WCAG21/#dfn-contrast-ratio."""
    return 1.05 / (luminance(colour) + 0.05)


@pytest.mark.parametrize(
    ("colour", "ratio"), [("#fff", 1.0), ("#000", 21.0), ("#767676", 4.54), ("#777777", 4.48), ("#0000ff", 8.59)]
)
def test_the_measure(colour: str, ratio: float) -> None:
    """Black on white is 21:1 in WCAG; #767676 is widely published as the lightest grey that passes, #777777 fails."""
    assert on_white(colour) == pytest.approx(ratio, abs=0.005)


@pytest.mark.parametrize(("scheme", "role", "colour"), COLOURS)
def test_contrast_on_white(scheme: str, role: str, colour: str) -> None:
    assert on_white(colour) >= LEAST_CONTRAST


@pytest.mark.parametrize("scheme", SCHEMES)
def test_every_kind_of_conductor_has_a_colour_of_its_own(scheme: str) -> None:
    assert set(SCHEMES[scheme]) == {kind.value for kind in LineKind}
    assert len(set(SCHEMES[scheme].values())) == len(LineKind)


@pytest.mark.parametrize(
    ("role", "least_deg", "most_deg"),
    [("dc", 15, 40), ("ac", 200, 240), ("earth", 110, 160), ("data", 270, 300)],  # orange, blue, green, violet
)
def test_a_role_has_its_hue(role: str, least_deg: float, most_deg: float) -> None:
    """Hue of red 0°, of green 120°, of blue 240°: the angle of HSV. Green for earth as in IEC 60445 (from memory)."""
    hue, _, _ = rgb_to_hsv(*fractions(SCHEMES["restrained"][role]))
    assert least_deg <= 360 * hue <= most_deg


@pytest.mark.parametrize(("one", "other"), list(combinations(LineKind, 2)))
def test_without_colour_lines_differ_in_width_or_pattern(one: LineKind, other: LineKind) -> None:
    assert (LINES[one].width_mm, LINES[one].dash) != (LINES[other].width_mm, LINES[other].dash)


@pytest.mark.parametrize("medium", DATA_LINES)
def test_no_data_line_is_drawn_as_power_or_as_what_is_future(medium: Medium) -> None:
    assert DATA_LINES[medium].dash not in (Dash.CONTINUOUS, Dash.DASHED, Dash.DOTTED)


@pytest.mark.parametrize("stroke", [Text((0.0, 0.0), "DC"), Arc((0.0, 0.0), 1.0, 1.0, 0.0, 90.0)])
def test_all_other_ink_is_black(stroke: Text | Arc) -> None:
    assert ink(stroke, "restrained") == "#000"


def test_monochrome_is_black() -> None:
    assert ink(conductor(((0.0, 0.0), (9.0, 0.0)), LineKind.DC), "monochrome") == "#000"


@pytest.fixture(scope="module")
def every_sheet(tmp_path_factory: pytest.TempPathFactory) -> tuple[Sheet, ...]:
    """The village hall, in colour by its spec."""
    folder = tmp_path_factory.mktemp("colour")
    shutil.copytree(ROOT / "specs" / "types", folder / "types")
    given = (ROOT / "specs" / "village-hall.yaml").read_text(encoding="utf-8")
    path = folder / "hall.yaml"
    path.write_text(f"drawing: {{colour: restrained}}\n{given}", encoding="utf-8")
    return run.draw(run.check(path)).sheets


@pytest.fixture(scope="module")
def drawn(every_sheet: tuple[Sheet, ...]) -> Sheet:
    """Sheet 1, with the diagram."""
    return every_sheet[0]


def black(sheet: Sheet) -> Sheet:
    return replace(sheet, colour="monochrome")


def test_the_svg_has_each_colour(drawn: Sheet) -> None:
    assert set(re.findall(r'stroke="(#[0-9a-f]{6})"', svg(drawn).decode())) == set(SCHEMES["restrained"].values())
    assert not re.findall(r"#[0-9a-f]{6}", svg(black(drawn)).decode())


def picture(sheet: Sheet, folder: Path) -> Any:
    """The picture of a sheet's PDF, without smoothing."""
    tool, image = shutil.which("pdftoppm"), pytest.importorskip("PIL.Image")
    if tool is None:
        pytest.skip("needs pdftoppm (poppler-utils)")
    path = folder / "sheet.pdf"
    path.write_bytes(pdf((sheet,)))
    command = [tool, "-r", "100", "-aaVector", "no", "-aa", "no", "-png", "-singlefile", str(path)]
    subprocess.run([*command, str(folder / "page")], capture_output=True, check=True)
    return image.open(folder / "page.png").convert("RGB")


def colours_of(image: Any) -> set[tuple[int, ...]]:
    return {colour for _, colour in image.getcolors(1 << 24)}


def white_parts(image: Any) -> bytes:
    """A byte for each pixel: 255 where it is white, that is where the least of its three parts is 255."""
    chops = pytest.importorskip("PIL.ImageChops")
    red, green, blue = image.split()
    return bytes(chops.darker(chops.darker(red, green), blue).point(lambda part: 255 * (part == 255)).tobytes())


def test_the_pdf_has_just_these_colours_and_is_else_the_same(drawn: Sheet, tmp_path: Path) -> None:
    white, colours = (255, 255, 255), SCHEMES["restrained"].values()
    coloured, plain = picture(drawn, tmp_path), picture(black(drawn), tmp_path)
    assert colours_of(plain) == {(0, 0, 0), white}
    assert colours_of(coloured) == {
        (0, 0, 0),
        white,
        *(tuple(round(255 * f) for f in fractions(each)) for each in colours),
    }
    assert white_parts(coloured) == white_parts(plain)
    assert set(white_parts(plain)) == {0, 255}


def test_the_dxf_has_them_on_the_layers(every_sheet: tuple[Sheet, ...]) -> None:
    ezdxf = pytest.importorskip("ezdxf", reason="needs ezdxf: pip install '.[dxf]'")
    from sld.render import dxf

    with_legend = next(sheet for sheet in every_sheet if any(group.section == "legend" for group in sheet.groups))
    document = ezdxf.read(io.StringIO(dxf(with_legend).decode()))
    names = {"ac": "POWER-AC", "dc": "POWER-DC", "earth": "EARTH", "data": "DATA"}
    for role, name in names.items():
        assert document.layers.get(name).rgb == tuple(round(255 * f) for f in fractions(SCHEMES["restrained"][role]))
    tables = document.modelspace().query("LWPOLYLINE[layer=='TABLE']")
    assert {each.rgb for each in tables if each.rgb} == {
        tuple(round(255 * part) for part in fractions(colour)) for colour in SCHEMES["restrained"].values()
    }  # the lines of the legend
