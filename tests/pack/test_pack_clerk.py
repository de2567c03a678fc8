"""Ten questions of a clerk at a network operator, each answered on the sheet and in the cell that the table names.

The questions: what published forms ask on or beside the diagram (the demands of operators in thirteen countries that
`sld.documents.completeness.asked` names too). The answers are those of three specs with contacts, dates and papers.
"""

from __future__ import annotations

import csv
from functools import cache
from pathlib import Path

import pytest
from pack_reader import contents, csv_rows, pages

from sld import run

ROOT = Path(__file__).parents[2]
ROWS = list(csv.DictReader((Path(__file__).parent / "clerk_questions.csv").read_text(encoding="utf-8").splitlines()))
SPECS = sorted({row["spec"] for row in ROWS})


@cache
def packed(spec: str) -> tuple[dict[str, bytes], dict[str, int]]:
    """The files of the pack for notification, and on which page each document begins."""
    checked = run.check(ROOT / "specs" / f"{spec}.yaml")
    made = run.pack(checked, "notify")
    first = {each.document.name: each.first_page for each in made.contents.entries}
    return run.pack_files(checked, made, spec, xlsx=False), first


def cell(table: list[list[str]], row: str, column: str) -> str:
    """A form has captions and values; a table has headings, and its first column names a row."""
    if not column:
        return next(value for caption, value in table if caption == row)
    place = table[0].index(column)
    return next(cells[place] for cells in table[1:] if cells[0] == row)


@pytest.mark.parametrize("spec", SPECS)
def test_ten_questions_are_answered(spec: str) -> None:
    files, first = packed(spec)
    texts = pages(files[f"{spec}.pdf"])
    asked = [row for row in ROWS if row["spec"] == spec]
    assert len({row["question"] for row in asked}) == 10
    for row in asked:
        table = csv_rows(files[f"{spec}-{row['table']}.csv"])
        assert cell(table, row["row"], row["column"]) == row["answer"], row["question"]
        page = texts[first[row["document"]] + int(row["sheet"]) - 2].split()
        assert set(row["answer"].split()) <= set(page), row["question"]


@pytest.mark.parametrize("spec", SPECS)
def test_the_list_of_what_is_asked_for_names_the_page_of_each_answer(spec: str) -> None:
    files, first = packed(spec)
    texts = pages(files[f"{spec}.pdf"])
    listed = csv_rows(files[f"{spec}-completeness-asked_for.csv"])[1:]
    assert len(listed) > 30
    answers = {row["answer"]: row for row in ROWS if row["spec"] == spec}
    seen = set()
    for _, _, answer, page in listed:
        if answer != "–":
            assert answer.split()[0].rstrip(";,") in texts[int(page) - 1], (answer, page)
        if answer in answers:
            seen.add(answer)
            assert int(page) == first[answers[answer]["document"]] + int(answers[answer]["sheet"]) - 1
    assert len(seen) >= 6


@pytest.mark.parametrize("spec", SPECS)
def test_nothing_that_an_operator_asks_is_blank_but_what_is_not_there(spec: str) -> None:
    files, _ = packed(spec)
    blank = {row[0] for row in csv_rows(files[f"{spec}-completeness-asked_for.csv"])[1:] if row[2] == "–"}
    not_there = {
        "Feed-in limit", "Einspeisebegrenzung", "Points of the characteristics", "Parcel of land",
        "Test results", "Prüfergebnisse",
    }  # fmt: skip
    assert blank <= not_there
    assert contents(files)


def test_the_list_counts_what_is_blank_and_the_cover_names_the_installation_first() -> None:
    """Parcel of land, feed-in limit, points of the characteristics and test results are not there."""
    files, first = packed("orchard-lodge")
    listed = csv_rows(files["orchard-lodge-completeness-asked_for.csv"])[1:]
    page = " ".join(pages(files["orchard-lodge.pdf"])[first["completeness"] - 1].split())
    assert f"Of {len(listed)} things that are asked for, 4 are not answered by the spec" in page
    captions = [caption for caption, _ in csv_rows(files["orchard-lodge-cover-installation.csv"])]
    assert captions == [
        "Purpose", "Installation", "Address of the site", "Customer", "Installer", "Network operator",
        "Number of the supply point",
    ]  # fmt: skip
