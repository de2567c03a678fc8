"""A document of a design: the bytes of the tour, sheet 1 in a notebook, and a folder that loses nothing."""

from __future__ import annotations

import base64
import csv
import pickle
import re
import xml.etree.ElementTree as ElementTree
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

import sld
from sld import run

ROOT = Path(__file__).resolve().parents[2]
HOUSE = ROOT / "specs" / "mill-house.yaml"


@pytest.fixture(scope="module")
def house() -> sld.Design:
    return sld.load(HOUSE)


@pytest.fixture(scope="module")
def drawing(house: sld.Design) -> sld.Document:
    return house.draw()


def test_it_is_what_the_tour_draws(drawing: sld.Document) -> None:
    composition = run.draw(run.check(HOUSE))
    files = run.files(composition.sheets, "x", ("svg", "pdf", "png"), about=composition.about)
    assert drawing.svg().encode() == drawing.svg(1).encode() == files["x.svg"]
    assert drawing.pdf() == files["x.pdf"]
    assert drawing.png(1) == files["x.png"]
    assert [sheet.number for sheet in drawing.sheets] == list(range(1, len(composition.sheets) + 1))


def test_documents_by_name(house: sld.Design, tmp_path: Path) -> None:
    documents = house.documents()
    assert tuple(documents) == run.made_for("full")
    assert documents["drawing"].svg() == house.draw().svg()
    calculation = documents["calculation"]
    assert calculation.svg() == house.documents("calculation")["calculation"].svg() != house.draw().svg()
    assert calculation.save(tmp_path, "pdf").files == (tmp_path / "mill-house-calculation.pdf",)
    assert calculation.save(tmp_path, "pdf", name="roof").files == (tmp_path / "roof-calculation.pdf",)
    assert tuple(house.documents(reader="crew")) == run.made_for("crew")
    with pytest.raises(
        ValueError, match=r"a document for this reader is one of drawing, .*, equipment, .*, not 'calculation'"
    ):
        house.documents("calculation", reader="crew")
    with pytest.raises(ValueError, match=r"is one of drawing, calculation, .*, not 'poem'"):
        house.documents("poem")


def test_the_tables_of_a_document_are_saved_as_they_are(house: sld.Design, tmp_path: Path) -> None:
    calculation = house.documents("calculation")["calculation"]
    assert calculation.tables
    assert len({table.name for table in calculation.tables}) == len(calculation.tables)
    saved = calculation.save(tmp_path, "csv").files
    for file, table in zip(saved, calculation.tables, strict=True):
        with file.open(encoding="utf-8-sig", newline="") as stream:
            read = list(csv.reader(stream))
        assert read == [list(row) for row in ((table.headings,) if table.headings else ()) + table.cells]


def test_a_notebook_shows_sheet_1(house: sld.Design, drawing: sld.Document) -> None:
    for shown in (house, drawing):
        svg = shown._repr_svg_()
        assert ElementTree.fromstring(svg).tag == "{http://www.w3.org/2000/svg}svg"
        assert 'aria-labelledby="sheet-1-title"' in svg
        picture = re.fullmatch(
            r'<img src="data:image/svg\+xml;base64,([^"]+)" alt="[^"]+" style=".*">', shown._repr_html_()
        )
        assert picture
        assert base64.b64decode(picture[1]).decode() == svg


@pytest.mark.parametrize("number", [0, -1, 99])
def test_a_sheet_that_is_not_there(number: int, drawing: sld.Document) -> None:
    with pytest.raises(LookupError, match=f"no sheet {number}; the document has sheets 1 to {len(drawing.sheets)}"):
        drawing.svg(number)


@pytest.mark.parametrize("dpi", [0, 35, 301])
def test_dots_that_are_refused(dpi: int, drawing: sld.Document, tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="36 to 300"):
        drawing.png(dpi=dpi)
    with pytest.raises(ValueError, match="36 to 300"):
        drawing.save(tmp_path, "png", dpi=dpi)
    assert list(tmp_path.iterdir()) == []


def test_paper_and_reader(house: sld.Design) -> None:
    larger = house.draw(paper="A2", reader="operator")
    assert larger.paper == "A2"
    assert (larger.sheets[0].width_mm, larger.sheets[0].height_mm) == (594, 420)  # ISO 216
    assert larger.svg() != house.draw(paper="A2").svg()


def test_threads_draw_the_same_bytes(house: sld.Design, drawing: sld.Document) -> None:
    with ThreadPoolExecutor(4) as pool:
        drawn = list(pool.map(lambda _: sld.load(HOUSE).draw(), range(4)))
    assert {each.svg() for each in drawn} == {drawing.svg()}
    assert {each.pdf() for each in drawn} == {drawing.pdf()}


def test_the_files_of_a_folder(house: sld.Design, drawing: sld.Document, tmp_path: Path) -> None:
    saved = drawing.save(tmp_path / "out")
    assert saved.files[0] == tmp_path / "out" / "mill-house.svg"
    assert tmp_path / "out" / "mill-house.pdf" in saved.files
    assert saved.files[0].read_text(encoding="utf-8") == drawing.svg()
    assert drawing.save(tmp_path / "out").files == saved.files  # its own are replaced
    crew = house.draw(reader="crew").save(str(tmp_path / "out"), "svg")
    assert crew.files[0].name == "mill-house-crew.svg"
    assert drawing.save(tmp_path / "out", ["strokes"], name="roof").files[0].name == "roof.strokes"


def test_a_file_of_others_is_not_replaced(drawing: sld.Document, tmp_path: Path) -> None:
    mine = tmp_path / "mill-house.pdf"
    mine.write_text("minutes of the meeting", encoding="utf-8")
    with pytest.raises(sld.Refused, match="not known as a file of this drawing") as caught:
        drawing.save(tmp_path)
    assert pickle.loads(pickle.dumps(caught.value)).refusals == caught.value.refusals
    assert [path.name for path in tmp_path.iterdir()] == ["mill-house.pdf"]
    assert mine.read_text(encoding="utf-8") == "minutes of the meeting"
    drawing.save(tmp_path, overwrite=True)
    assert mine.read_bytes() == drawing.pdf()


def test_signs_that_the_font_lacks(drawing: sld.Document) -> None:
    page = (ROOT / "gallery" / "spec-reference.md").read_text(encoding="utf-8")
    small = page.split("```yaml\n")[1].split("```")[0]
    assert drawing.lacking == ""
    assert sld.load(text=small.replace("House", "家 House 家")).draw().lacking == "家"


def test_what_was_read_is_never_replaced(tmp_path: Path) -> None:
    spec = tmp_path / "mill-house.strokes"
    page = (ROOT / "gallery" / "spec-reference.md").read_text(encoding="utf-8")
    spec.write_text(page.split("```yaml\n")[1].split("```")[0], encoding="utf-8")
    before = spec.read_bytes()
    with pytest.raises(sld.Refused):
        sld.load(spec).draw().save(tmp_path, "strokes", overwrite=True)
    assert spec.read_bytes() == before


def test_a_spec_without_a_file(tmp_path: Path) -> None:
    page = (ROOT / "gallery" / "spec-reference.md").read_text(encoding="utf-8")
    drawing = sld.load(text=page.split("```yaml\n")[1].split("```")[0]).draw()
    with pytest.raises(ValueError, match="save\\(folder, name="):
        drawing.save(tmp_path)
    (file,) = drawing.save(tmp_path, "pdf", name="roof").files
    assert file.read_bytes() == drawing.pdf()
    other = sld.load(HOUSE).draw()
    with pytest.raises(sld.Refused, match=r"is of the drawing roof of .*a spec without a file"):
        other.save(tmp_path, "pdf", name="roof")


@pytest.mark.parametrize("name", ["", ".", "..", "a/b", "../a", "a\\b", "a\0b"])
def test_a_name_stays_in_its_folder(name: str, drawing: sld.Document, tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="name of files"):
        drawing.save(tmp_path / "out", "svg", name=name)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("formats", [[], "jpg", ["svg", "jpg"], "svg,pdf"])
def test_a_format_that_is_not_written(formats: str | list[str], drawing: sld.Document, tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="formats are of svg, pdf, png, html, dxf, strokes, csv"):
        drawing.save(tmp_path, formats)
    assert list(tmp_path.iterdir()) == []
