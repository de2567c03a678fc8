"""PDF read back with poppler's tools; PNG compared with the PDF."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from io import BytesIO
from pathlib import Path

import pytest
from drawn_sheets import NASTY, PLAIN, sheet
from PIL import Image

from sld.render import MissingCairo, pdf, png
from sld.sheet.sheet import About, Group, Sheet
from sld.symbols.stroke import Polyline, Text
from sld.symbols.typeface import SLACK_MM, text_width_mm

MM_PER_POINT = 25.4 / 72
ABOUT = About("Merren & Sons", ("PV", "single-line diagram"), "2026-04-14")
ROOT = Path(__file__).parents[2]


def tool(name: str, *arguments: str) -> str:
    path = shutil.which(name)
    if path is None:
        pytest.skip(f"needs {name}")
    return subprocess.run([path, *arguments], capture_output=True, text=True, check=True).stdout


@pytest.fixture
def file(tmp_path: Path) -> str:
    path = tmp_path / "sheet.pdf"
    path.write_bytes(pdf((sheet(1), sheet(2, width_mm=594.0, height_mm=420.0)), ABOUT))
    return str(path)


def test_pages_and_their_sizes(file: str) -> None:
    facts = tool("pdfinfo", "-l", "2", file)
    # A3 and A2 of ISO 216 in points: mm x 72 / 25.4
    sizes = [tuple(map(float, pair)) for pair in re.findall(r"size:\s+([\d.]+) x ([\d.]+)", facts)]
    assert sizes == [pytest.approx((1190.55, 841.89), abs=0.01), pytest.approx((1683.78, 1190.55), abs=0.01)]
    assert re.search(r"Title:\s+Title & <1>", facts)
    assert re.search(r"Keywords:\s+PV, single-line diagram", facts)
    assert re.search(r"Creator:\s+sld", facts)
    assert re.search(r"Author:\s+Merren & Sons", facts)
    assert re.search(r"Subject:\s+Two strings feed one inverter\.", facts)


def test_the_date_is_the_one_given(file: str, tmp_path: Path) -> None:
    dates = tool("pdfinfo", "-isodates", file)
    assert re.findall(r"(?:CreationDate|ModDate):\s+(\S+)", dates) == ["2026-04-14T00:00:00Z"] * 2
    bare = tmp_path / "bare.pdf"
    bare.write_bytes(pdf((sheet(),)))
    facts = tool("pdfinfo", "-isodates", str(bare))
    assert re.findall(r"(?:CreationDate|ModDate):\s+(\S+)", facts) == ["2000-01-01T00:00:00Z"] * 2
    assert not re.search(r"(Author|Keywords):\s+\S", facts)


def outline(content: bytes) -> list[tuple[str, str, float, float]]:
    """Return title, title of the entry above, x and y of each entry, as PDF 32000-1:2008, 12.3.3 defines the items."""
    text = content.decode("latin-1")
    items = re.findall(r"(\d+) 0 obj\n<< /Title \((.*)\)\n((?:   /.*\n)+)", text)
    titles = {number: title for number, title, _ in items}
    found = []
    for _, title, rest in items:
        parent = re.search(r"/Parent (\d+) 0 R", rest)
        place = re.search(r"/XYZ ([\d.]+) ([\d.]+)", rest)
        assert parent
        assert place
        found.append((title, titles.get(parent[1], ""), float(place[1]), float(place[2])))
    return found


def test_an_outline_entry_for_each_sheet_and_what_stands_on_it() -> None:
    line = Polyline(((30.0, 100.0), (60.0, 100.0)))
    table = Group("block-1-1", "table", (line, Text((30.0, 110.0), "Cable")), "Cable schedule")
    again = Group("block-1-2", "table", (Text((200.0, 20.0), "Cable"),), "Cable schedule")
    wire = Group("wire-1", "ac", (line,), "-FC1 – -TB1")
    pages = [Sheet(420.0, 297.0, n, f"Hall, sheet {n} of 2", "", "en", (wire, table, again)) for n in (1, 2)]
    found = outline(pdf(pages))
    # PDF measures from the lower left corner in points of 1/72 inch; 3 mm are left beside and above the capitals
    x, y = 27.0 / MM_PER_POINT, (297.0 - (110.0 - 2.5 - 3.0)) / MM_PER_POINT
    top = 297.0 / MM_PER_POINT
    assert [entry[:2] for entry in found] == [
        ("Hall, sheet 1 of 2", ""), ("Cable schedule", "Hall, sheet 1 of 2"),
        ("Hall, sheet 2 of 2", ""), ("Cable schedule", "Hall, sheet 2 of 2"),
    ]  # fmt: skip
    for n, place in enumerate([(0.0, top), (x, y)] * 2):
        assert found[n][2:] == pytest.approx(place, abs=0.1)


def test_text_can_be_found(file: str) -> None:
    found = tool("pdftotext", "-layout", file, "-")
    for text in PLAIN:
        assert found.count(text) >= 2  # once a page


def test_fonts_are_the_shipped_one_and_embedded(file: str) -> None:
    lines = tool("pdffonts", file).splitlines()[2:]
    assert lines
    for line in lines:
        assert "DejaVuSansCondensed" in line
        assert re.search(r"\byes\s+yes\s+yes\b", line)  # embedded, subset, with a map to Unicode


def test_words_stand_where_the_font_says(file: str) -> None:
    page = tool("pdftotext", "-l", "1", "-bbox", file, "-")
    boxes = re.findall(r'<word xMin="([\d.]+)"[^>]*xMax="([\d.]+)"[^>]*>([^<]*)<', page)
    ends = {word: (float(left) * MM_PER_POINT, float(right) * MM_PER_POINT) for left, right, word in boxes}
    for stroke in (s for group in sheet().groups for s in group.strokes if isinstance(s, Text)):
        first, last = stroke.text.split()[0], stroke.text.split()[-1]
        assert ends[first][0] == pytest.approx(stroke.at[0], abs=0.02)
        width = text_width_mm(stroke.text, stroke.height_mm)
        assert ends[last][1] == pytest.approx(stroke.at[0] + width, abs=SLACK_MM / 3)


def test_same_bytes_again() -> None:
    """For another process, one without fonts too, see `tests/test_run.py`."""
    assert pdf((sheet(),)) == pdf((sheet(),))


def test_a_line_after_a_text_begins_at_its_own_first_point() -> None:
    line, text = Polyline(((10.0, 10.0), (20.0, 12.0))), Text((40.0, 30.0), "16 A")

    def drawn(*strokes: Polyline | Text) -> bytes:
        groups = tuple(Group(f"x{place}", "symbol", (stroke,)) for place, stroke in enumerate(strokes))
        return png(Sheet(60.0, 40.0, 1, "T", "D", "en", groups), 100)

    assert drawn(text, line) == drawn(line, text) != drawn(text)


def test_nasty_texts_are_drawn() -> None:
    assert pdf((sheet(texts=NASTY),)).startswith(b"%PDF")
    assert png(sheet(texts=NASTY), 50).startswith(b"\x89PNG")


def test_the_environment_is_left_as_it_was() -> None:
    before = dict(os.environ)
    pdf((sheet(),))
    assert dict(os.environ) == before


def test_of_several_threads_one_sets_the_environment(monkeypatch: pytest.MonkeyPatch) -> None:
    from sld.render import font

    calls: list[None] = []
    monkeypatch.setattr(font, "_read_configuration_again", lambda: (calls.append(None), time.sleep(0.05)))
    font._cairo_with_font.cache_clear()
    with ThreadPoolExecutor(4) as threads:
        made = threads.map(lambda _: pdf((sheet(texts=NASTY),)), range(4))
        assert len(set(made)) == len(calls) == 1


def test_missing_library_is_told_with_the_line_to_type(monkeypatch: pytest.MonkeyPatch) -> None:
    from sld.render import font

    font._cairo_with_font.cache_clear()
    monkeypatch.setitem(sys.modules, "cairocffi", None)
    monkeypatch.setattr("builtins.__import__", _without_cairo(__import__))
    with pytest.raises(MissingCairo, match="sudo apt-get install -y libcairo2"):
        pdf((sheet(),))


def _without_cairo(original):  # type: ignore[no-untyped-def]
    def importer(name, *rest, **named):  # type: ignore[no-untyped-def]
        if name == "cairocffi":
            raise OSError("no library called cairo was found")  # what cairocffi raises
        return original(name, *rest, **named)

    return importer


def test_no_sheets_no_pdf() -> None:
    with pytest.raises(ValueError, match="at least one"):
        pdf(())


@pytest.mark.parametrize(("dots_per_inch", "size"), [(96, (1587, 1122)), (150, (2480, 1754))])
def test_png_size(dots_per_inch: int, size: tuple[int, int]) -> None:
    data = png(sheet(), dots_per_inch)  # the header of a PNG gives width and height at bytes 16 to 24 (ISO/IEC 15948)
    found = (int.from_bytes(data[16:20]), int.from_bytes(data[20:24]))
    assert found == pytest.approx(size, abs=1)


def test_a_png_says_which_sheet_it_is() -> None:
    """Read back by another library, which checks the code of each chunk."""
    picture = Image.open(BytesIO(png(sheet(number=12), 50)))
    picture.load()
    assert picture.info["Software"] == "sld (sheet 12)"


def test_a_png_of_a_very_long_sheet_has_as_many_dots_as_there_can_be() -> None:
    data = png(sheet(width_mm=20_000.0, height_mm=50.0), 300)
    assert int.from_bytes(data[16:20]) == 32_000


def test_png_and_pdf_show_the_same_picture(file: str, tmp_path: Path) -> None:
    image = pytest.importorskip("PIL.Image")
    from io import BytesIO

    tool("pdftoppm", "-r", "100", "-l", "1", "-gray", "-png", "-singlefile", file, str(tmp_path / "page"))
    one = image.open(tmp_path / "page.png").convert("L")
    two = image.open(BytesIO(png(sheet(), 100))).convert("L").resize(one.size)
    pairs = zip(one.tobytes(), two.tobytes(), strict=True)
    ink = sum(value < 128 for value in one.tobytes())
    apart = sum(abs(a - b) > 160 for a, b in pairs)
    assert ink > 3000
    assert apart < ink / 5  # they differ at the edges of strokes only
