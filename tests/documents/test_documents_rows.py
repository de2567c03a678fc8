"""Two ways out and no third: a table's CSV and its page hold the same cells."""

from __future__ import annotations

import csv
import re
from io import StringIO
from itertools import zip_longest
from pathlib import Path

import pytest
from example_specs import FEW, SAMPLED, SPECS, case, document

from sld import run
from sld.documents.registry import KINDS
from sld.sheet.compose import Composition
from sld.sheet.listings.laid import TITLE_MM
from sld.symbols.stroke import Text
from sld.symbols.typeface import printable

SPARSE = {"strings", "cables", "equipment", "earthing", "terminals", "data_bus"}
"""Tables whose columns are left out on paper where no row says anything."""

EACH = [case(path, kind, sampled=kind == "drawing" or path.stem in FEW) for path in SPECS for kind in KINDS]
"""The drawing of every spec, which other tests look at too; all documents of a few."""


def composed(path: Path) -> dict[str, Composition]:
    return {each: document(path, each) for each in KINDS}


def as_rows(made: Composition) -> dict[str, list[list[str]]]:
    """The tables as a spreadsheet reads their CSV (RFC 4180), by the name of the section."""
    files = run.files(made.sheets, "x", ("csv",), tables=made.tables)
    return {
        name.removeprefix("x-").removesuffix(".csv"): list(
            csv.reader(StringIO(content.decode("utf-8-sig"), newline=""), strict=True)
        )
        for name, content in files.items()
    }


def on_pages(made: Composition) -> dict[str, list[str]]:
    """What is printed of each section, part by part: its texts without the title, spaces left out."""
    found: dict[str, list[str]] = {}
    for sheet in made.sheets:
        for group in sheet.groups:
            if group.section and not group.key.endswith("-continued"):
                texts = [s for s in group.strokes if isinstance(s, Text)]
                titles = [s for s in texts if s.height_mm == TITLE_MM]
                if group.section == "notice_labels":  # whose letters are as large as those of a title
                    titles = titles[:1]
                told = "".join(s.text for s in texts if s not in titles)
                found.setdefault(group.section, []).append(squeezed(told))
    return found


def squeezed(text: str) -> str:
    """A text without spaces and without the strokes between headings that share a column."""
    return "".join(printable(text).split()).replace("/", "")


def abreast(lines: list[list[str]]) -> list[list[str]]:
    """The second half of the lines beside the first."""
    half = (len(lines) + 1) // 2
    return [[*left, *right] for left, right in zip_longest(lines[:half], lines[half:], fillvalue=[])]


BEHIND = {
    "Make, model": ("ratings",),
    "Place": ("status unless new",),
    "Protocol, medium": ("baud rate", "cable", "termination"),
    "Hersteller, Typ": ("Bemessungswerte",),
    "Ort": ("Status, wenn nicht neu",),
    "Protokoll, Medium": ("Baudrate", "Leitung", "Abschluss"),
}
"""By a heading: what the columns are called that stand behind it on paper."""

USUAL = {"status unless new": "new", "Status, wenn nicht neu": "neu"}
"""What such a column need not say."""


def as_printed(head: list[str], cells: list[list[str]]) -> tuple[list[str], list[list[str]]]:
    """Headings and cells as they stand on paper: some behind those before them, columns that say nothing left out."""
    heads: list[str] = []
    columns: list[list[str]] = []
    places = iter(zip(head, map(list, zip(*cells, strict=True)), strict=True))
    for heading, column in places:
        for called in BEHIND.get(heading, ()):
            heading = f"{heading}; {called}"
            column = [behind(*both, USUAL.get(called)) for both in zip(column, next(places)[1], strict=True)]
        if {*column} - {"", "–"}:
            heads.append(heading)
            columns.append(column)
    return heads, [list(row) for row in zip(*columns, strict=True)]


SHORT = {"From – to": "From – to in the circuit", "Von – nach": "Von – nach im Stromkreis"}
"""The heading of the ends of cables where on paper they stand without the owner of the cable."""


def in_the_circuit(cables: str, ends: str) -> str:
    """Return the ends without the owners of the cables, as they stand on paper; whole where not all are of these."""
    owners = {cable.rpartition("-")[0] for cable in cables.split(", ")}
    made = []
    for group in (each.split(", ") for each in ends.split(" – ")):
        of_each = [[end.removeprefix(owner) for end in group if end.startswith(f"{owner}-")] for owner in owners]
        if "" in owners or sum(map(len, of_each)) != len(group) or any(each != of_each[0] for each in of_each):
            return ends
        made.append(", ".join(of_each[0]))
    return " – ".join(made)


def owners_once(head: list[str], cells: list[list[str]], printed: str) -> tuple[list[str], list[list[str]]]:
    """Headings and cells of the cable schedule, with the owner in the designation alone where all are printed so."""
    short = [head[0], SHORT[head[1]], *head[2:]]
    if not printed.startswith(squeezed("".join(short[:2]))):
        return head, cells
    made = [[cables, in_the_circuit(cables, ends), *others] for cables, ends, *others in cells]
    assert not [row for row in made if row in cells]
    return short, made


def numbers_alone(names: str) -> str:
    """Return designations that differ in one number with what is common said once, where that is shorter."""
    parts = [re.split("([0-9]+)", name) for name in names.split(", ")]
    differing = [place for place, texts in enumerate(zip(*parts, strict=False)) if len({*texts}) > 1]
    if len({len(each) for each in parts}) > 1 or len(differing) != 1 or "…" in names:
        return names
    (place,) = differing
    first = parts[0]
    numbers = ", ".join(each[place] for each in parts)
    return min(names, "".join([*first[:place], numbers, *first[place + 1 :]]), key=len)


def behind(first: str, second: str, usual: str | None) -> str:
    said = [each for each in (first, "" if second == usual else second) if each not in ("", "–")]
    return ", ".join(said) if said else first


@pytest.mark.parametrize(("path", "kind"), EACH)
def test_csv_and_page_hold_the_same_cells_in_the_same_order(path: Path, kind: str) -> None:
    made = document(path, kind)
    pages = on_pages(made)
    tables = {table.name: table for table in made.tables}
    rows = as_rows(made)
    assert set(rows) == set(tables)
    assert len(rows) >= (4 if kind in ("drawing", "calculation") else 0)
    for section, lines in rows.items():
        head, cells = (lines[0], lines[1:]) if tables[section].headings else ([], lines)
        assert all(len(line) == len(lines[0]) for line in lines)
        if section.partition("-")[0] == "cables" and kind != "calculation":
            head, cells = owners_once(head, cells, pages[section][0])
        if section == "differences":
            cells = [[numbers_alone(names), *others] for names, *others in cells]
        if section in SPARSE and kind != "calculation":
            head, cells = as_printed(head, cells)
        heading = squeezed("".join(head)) if section != "notice_labels" else ""  # labels have none
        parts = pages[section]
        if section.partition("-")[0] == "summary" and any(part.startswith(2 * heading) for part in parts):
            heading, cells = 2 * heading, abreast(cells)
        assert all(part.startswith(heading) for part in parts), section
        assert "".join(part.removeprefix(heading) for part in parts) == squeezed("".join(map("".join, cells))), section


@pytest.mark.parametrize("path", SAMPLED)
def test_every_table_on_the_sheets_has_its_csv(path: Path) -> None:
    """What is on the sheets and is no table: lists and the legend."""
    lists = {
        "cautions",
        "findings",
        "accepted",
        "assumptions",
        "taken",
        "notes",
        "from_memory",
        "insulation_test",
        "legend",
        "mounting_notes",
        "grid_sources",
        "switching_cautions",
    }
    for made in composed(path).values():
        assert set(on_pages(made)) - lists == set(as_rows(made))


@pytest.mark.parametrize("path", SAMPLED)
def test_sections_are_those_of_the_registry(path: Path) -> None:
    for kind, made in composed(path).items():
        names = {section.rstrip("-0123456789") for section in on_pages(made)}
        assert names <= set(KINDS[kind].sections)
