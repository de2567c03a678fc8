"""A pack: contents, bookmarks and pages agree, tables are the same in every form, the manifest holds what it was made
of, and a second run gives the same bytes. The smallest spec; `prove_packs.py` does it with every spec."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

import pytest
from pack_reader import bookmarks, contents, csv_rows, pages, xlsx_rows

from sld import run
from sld.documents.registry import KINDS
from sld.readers import PURPOSES, READERS
from sld.sheet.lint import lint

SPEC = Path(__file__).parents[2] / "specs" / "mill-house.yaml"


@pytest.fixture(scope="module")
def checked() -> run.Checked:
    return run.check(SPEC)


@pytest.fixture(scope="module")
def made(checked: run.Checked) -> run.Pack:
    return run.pack(checked, "handover")


@pytest.fixture(scope="module")
def files(checked: run.Checked, made: run.Pack) -> dict[str, bytes]:
    pytest.importorskip("openpyxl")
    return run.pack_files(checked, made, "house")


def test_contents_bookmarks_and_pages_agree(files: dict[str, bytes]) -> None:
    pdf, listed = files["house.pdf"], contents(files)
    texts = pages(pdf)
    assert [first for _, first, _ in listed] == [2, *(first + count for _, first, count in listed[:-1])]
    assert len(texts) == sum(count for _, _, count in listed) + 1
    chapters = [(title, page) for title, above, page in bookmarks(pdf) if not above]
    assert chapters == [("Cover and contents", 1), *((title, first) for title, first, _ in listed)]
    for number, text in enumerate(texts, 1):
        assert f"of {len(texts)}" in text
        title = next(title for title, first, count in reversed(listed) if first <= number) if number > 1 else "Cover"
        assert title.split()[0] in text
    assert {page for _, above, page in bookmarks(pdf) if above} <= set(range(1, len(texts) + 1))


def test_sections_begin_where_their_bookmarks_say(files: dict[str, bytes]) -> None:
    texts = pages(files["house.pdf"])
    for title, above, page in bookmarks(files["house.pdf"]):
        words = texts[page - 1].split()
        if not above:  # the title block breaks what a document is called over its lines
            assert set(title.split()) <= set(words), title
        elif title != "Title block":  # of the drawing: it needs no heading to be found
            assert " ".join(title.split(",")[0].split()) in " ".join(words), (title, above)


def test_nothing_overlaps(made: run.Pack) -> None:
    assert [defect.message for sheet in made.bound.sheets for defect in lint(sheet)] == []


def test_tables_are_the_same_in_csv_and_xlsx(files: dict[str, bytes], made: run.Pack) -> None:
    sheets = xlsx_rows(files["house.xlsx"])
    csvs = {name: csv_rows(content) for name, content in files.items() if name.endswith(".csv")}
    assert len(sheets) == len(csvs) == len(made.tables) > 10
    for cells, rows in zip(sheets.values(), csvs.values(), strict=True):
        assert [[text.replace("\n", " ") for text in row] for row in cells] == [
            [text.replace("\n", " ") for text in row] for row in rows
        ]


def test_no_cell_is_a_formula(checked: run.Checked) -> None:
    """What begins with = in a spec stays text in a spreadsheet."""
    pytest.importorskip("openpyxl")
    from sld.render import xlsx
    from sld.rows import Rows

    cells = xlsx_rows(xlsx({"a": Rows("a", ("Name",), (("=1+1",), ("+2",)))}))["a"]
    assert cells == [["Name"], ["=1+1"], ["+2"]]


def test_the_manifest_holds_what_the_pack_was_made_of(checked: run.Checked, files: dict[str, bytes]) -> None:
    told = json.loads(files["manifest.json"])
    others = {name: content for name, content in files.items() if name != "manifest.json"}
    assert told["files"] == {name: hashlib.sha256(content).hexdigest() for name, content in others.items()}
    assert told["read"] == {path.name: hashlib.sha256(path.read_bytes()).hexdigest() for path in checked.source.files()}
    devices = {each["key"]: each for each in told["system"]["devices"]}
    assert devices.keys() == checked.system.devices.keys()
    for key, device in checked.system.devices.items():
        assert devices[key]["designation"] == device.designation
    values = {(key, name): each["value"] for key, of in told["ratings"].items() for name, each in of.items()}
    assert values == {
        (key, symbol.name): rating.value for key, of in checked.ratings.values.items() for symbol, rating in of.items()
    }
    assert told["tables"]["profiles"]["edition"]
    assert [each["code"] for each in told["findings"]] == [each.code for each in checked.findings]


def test_a_second_run_gives_the_same_bytes(checked: run.Checked, files: dict[str, bytes]) -> None:
    again = run.check(SPEC)
    assert run.pack_files(again, run.pack(again, "handover"), "house") == files


@pytest.mark.parametrize("purpose", PURPOSES)
def test_a_pack_has_the_documents_of_its_purpose(purpose: str) -> None:
    of = PURPOSES[purpose]
    assert of.documents[0] == "drawing" or "drawing" in of.documents
    assert set(of.documents) <= set(KINDS)
    assert set(of.documents) <= set(READERS[of.reader].documents), "a reader gets what is made for him"
