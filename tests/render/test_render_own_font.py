"""Letters that the font of the sheets lacks, from a font that the spec names: in SVG and PDF, else refused.

The font is made here: what is drawn can be told from its two signs.
"""

from __future__ import annotations

import base64
import re
import shutil
import subprocess
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pytest
from drawn_sheets import sheet
from fontTools.ttLib import TTFont
from own_font import own_font

from sld import run
from sld.picture.lettering import read_font
from sld.picture.picture import BadPicture
from sld.render import UnknownLetters, pdf, readable, svg
from sld.sheet.lint import lint
from sld.sheet.sheet import Sheet
from sld.spec import Unusable

FONT = own_font({"家": 1000, "屋": 900, "一": 1500})


def house(text: str = "家 roof 屋") -> Sheet:
    return replace(sheet(texts=(text,)), font=read_font(FONT))


def test_the_svg_carries_the_letters_that_are_used() -> None:
    """A second face of the one family, for these letters alone; their advances are those of the named font."""
    text = svg(house()).decode("utf-8")
    ((packed, codes),) = re.findall(r'base64,([^)]*)\) format\("woff"\);unicode-range:([^}]*)}', text)
    assert codes == "U+5BB6,U+5C4B"
    font = TTFont(BytesIO(base64.b64decode(packed)))
    assert {chr(code): font["hmtx"][name][0] for code, name in font.getBestCmap().items()} == {"家": 1000, "屋": 900}
    assert text.count("@font-face") == 2
    assert svg(house()) == svg(house())


def test_a_sheet_that_needs_none_carries_none() -> None:
    assert svg(house("roof")) == svg(sheet(texts=("roof",)))
    assert pdf([house("roof")]) == pdf([sheet(texts=("roof",))])


@pytest.mark.skipif(shutil.which("pdffonts") is None, reason="needs poppler-utils")
def test_the_pdf_embeds_a_subset_and_can_be_searched(tmp_path: Path) -> None:
    file = tmp_path / "house.pdf"
    file.write_bytes(pdf([house()]))
    fonts = subprocess.run(["pdffonts", str(file)], capture_output=True, text=True, check=True).stdout.splitlines()[2:]
    assert len(fonts) == 2
    assert all(line.split()[-5:-2] == ["yes", "yes", "yes"] for line in fonts), "embedded, a subset, with Unicode"
    told = subprocess.run(["pdftotext", str(file), "-"], capture_output=True, text=True, check=True).stdout
    assert "家 roof 屋" in told
    assert pdf([house()]) == pdf([house()])


def test_what_neither_font_has_is_refused_with_the_letters() -> None:
    readable([house()])
    assert not [each for each in lint(house()) if each.kind == "glyph"]
    with pytest.raises(UnknownLetters, match="no 山,"):
        readable([house("家 山")])
    with pytest.raises(UnknownLetters, match="no 一,"):  # wider than the em that it is counted as
        readable([house("一")])
    with pytest.raises(UnknownLetters, match="`font` under `drawing`"):
        readable([sheet(texts=("家",))])


SPEC = Path(__file__).parents[2] / "specs" / "village-hall.yaml"


def named(folder: Path, name: str, content: bytes | None) -> Path:
    """The village hall with a font beside it."""
    shutil.copytree(SPEC.parent / "types", folder / "types")
    if content is not None:
        (folder / name).write_bytes(content)
    text = SPEC.read_text(encoding="utf-8").replace("Merren village hall", "家屋 village hall")
    path = folder / "hall.yaml"
    path.write_text(f"{text}\ndrawing: {{font: {name}}}\n", encoding="utf-8")
    return path


def test_a_spec_names_its_font(tmp_path: Path) -> None:
    checked = run.check(named(tmp_path, "own.ttf", FONT))
    assert tmp_path / "own.ttf" in checked.source.files()
    made = run.draw(checked)
    readable(made.sheets)
    assert "unicode-range:U+5BB6,U+5C4B" in svg(made.sheets[0]).decode("utf-8")


@pytest.mark.parametrize(
    ("name", "content", "told"),
    [
        ("own.ttf", b"no font", "SP29"),
        ("own.ttf", FONT[:200], "SP29"),
        ("gone.ttf", None, "SP21"),
    ],
)
def test_what_is_no_font_is_refused_at_its_place(tmp_path: Path, name: str, content: bytes | None, told: str) -> None:
    with pytest.raises(Unusable) as caught:
        run.check(named(tmp_path, name, content))
    assert [(each.code, each.at) for each in caught.value.findings] == [(told, ("drawing", "font"))]


def test_a_font_may_be_of_a_size() -> None:
    with pytest.raises(BadPicture, match="larger than 40 MB"):
        read_font(bytes(40_000_001))
