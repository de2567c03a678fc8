"""The calculation of every spec: each rating once, in the order of the energy, numbers that give the result."""

from __future__ import annotations

import csv
import re
import shutil
from functools import cache
from io import StringIO
from math import ceil, floor, log10, sqrt
from pathlib import Path

import example_specs
import pytest

from sld import run
from sld.documents.registry import KINDS
from sld.quantity import Rating
from sld.sheet.compose import Composition
from sld.sheet.lint import lint
from sld.sheet.sheet import Group
from sld.symbols.stroke import Text

SPECS = Path(__file__).parents[2] / "specs"
NAMES = sorted(path.stem for path in SPECS.glob("*.yaml"))
SAMPLED = [pytest.param(name, marks=[] if name in example_specs.FEW else [pytest.mark.whole]) for name in NAMES]
MOST_FORMULAS = sorted({*example_specs.FEW, "ford-barn", "quay-cottage", "hill-farm", "cedar-house"})
"""Specs that have nine in ten of the formulas between them."""


def checked(name: str) -> run.Checked:
    return example_specs.checked(SPECS / f"{name}.yaml")


def composed(name: str) -> Composition:
    return example_specs.document(SPECS / f"{name}.yaml", "calculation")


def ratings(name: str) -> list[tuple[str, Rating]]:
    """What was computed, with the keys of what it belongs to, behind each supply point."""
    return [each for part in checked(name).parts for each in part.ratings]


def named(name: str) -> dict[str, str]:
    """The designations of what has ratings, by key."""
    systems = [part.system for part in checked(name).parts]
    names = {key: device.designation for key, device in checked(name).devices.items()}
    return names | {each.key: each.designation for of in systems for each in (*of.earth_conductors, *of.chains)}


@cache
def tables(name: str) -> dict[str, list[dict[str, str]]]:
    """The tables as a spreadsheet reads them: rows by heading, from the CSV."""
    made = composed(name)
    found = {}
    for file, content in run.files(made.sheets, name, ("csv",), tables=made.tables).items():
        rows = list(csv.DictReader(StringIO(content.decode("utf-8-sig"), newline="")))
        found[file.removesuffix(".csv").removeprefix(f"{name}-")] = rows
    return found


def designations(text: str) -> set[str]:
    """The single designations of a list with ranges: `-TB1…3-FC1, -TB5` is -TB1-FC1, -TB2-FC1, -TB3-FC1, -TB5."""
    found: set[str] = set()
    for part in text.split(", "):
        spread = [""]
        for piece in re.split(r"([0-9]+…[0-9]+)", part):
            first, _, last = piece.partition("…")
            choices = [str(n) for n in range(int(first), int(last) + 1)] if last else [piece]
            spread = [before + choice for before in spread for choice in choices]
        found |= set(spread)
    return found


@pytest.mark.parametrize("name", SAMPLED)
def test_every_rating_stands_there_once(name: str) -> None:
    """By designation, symbol and result: what the steps computed, and nothing else."""
    names = named(name)
    wanted: dict[tuple[str, str], int] = {}
    for key, rating in ratings(name):
        for each in designations(names.get(key, "system")):
            wanted[each, rating.symbol.printed] = wanted.get((each, rating.symbol.printed), 0) + 1
    found: dict[tuple[str, str], int] = {}
    for rows in tables(name).values():
        for row in rows:
            for each in designations(row["Designation"]) if row["Symbol"] and row["Result"] != "no value" else ():
                found[each, row["Symbol"]] = found.get((each, row["Symbol"]), 0) + 1
    assert found == wanted


@pytest.mark.parametrize("name", SAMPLED)
def test_each_row_has_the_whole_reason(name: str) -> None:
    """Beside each designation and symbol: value, formula, inputs, what governed, source, row of the table, assumptions.

    Where a text names other devices, they may stand there as a range; it is then compared without designations.
    """
    names = named(name)
    rows: dict[tuple[str, str], list[dict[str, str]]] = {}
    for row in (row for told in tables(name).values() for row in told):
        for each in designations(row["Designation"]):
            rows.setdefault((each, row["Symbol"]), []).append(row)
    governed = 0
    for key, rating in ratings(name):
        first = sorted(designations(names.get(key, "system")))[0]
        inputs = [str(each) for each in rating.given if each.name != "governed by"]
        governing = [str(each).partition(" = ")[2] for each in rating.given if each.name == "governed by"]
        governed += len(governing)
        wanted = {
            "Quantity": str(rating.symbol.meaning),
            "Result": str(rating).partition(" = ")[2],
            "Formula": str(rating.formula),
            "Governed by": "; ".join(f"governed by: {each}" for each in governing),
            "Source": str(rating.clause),
            "Row of the table": str(rating.table_row),
            "Assumed": "; ".join(f"assumed: {each}" for each in rating.assumptions),
        }
        plain = {heading: without_designations(text) for heading, text in wanted.items()}
        found = [
            row
            for row in rows[first, rating.symbol.printed]
            if all(without_designations(row[heading]) == text for heading, text in plain.items())
        ]
        assert found, f"{first} {rating.symbol}"
        values = {value for each in inputs if (value := without_designations(each).partition(" = ")[2])}
        assert any(all(value in without_designations(row["Numbers put in"]) for value in values) for row in found)
    assert governed, "no spec without a choice between demands"


def without_designations(text: str) -> str:
    return re.sub(r"(each of )?(-[A-Z]+[0-9…]+)+(, (-[A-Z]+[0-9…]+)+)*", "@", text)


def test_all_of_a_cable_stands_together_where_a_board_has_two() -> None:
    """Two cables one behind the other, the one at the board first; what two boards have alike stands once."""
    names = [row["Designation"].split(", ")[0] for row in tables("quay-cottage")["boards"]]
    cables = [name for name in names if name.startswith("-WC2-WD")]
    assert list(dict.fromkeys(cables)) == ["-WC2-WD2", "-WC2-WD1"]
    assert cables == sorted(cables, reverse=True)


def test_sixty_equal_circuits_are_told_once(tmp_path: Path) -> None:
    text = (SPECS / "ferry-depot.yaml").read_text(encoding="utf-8")
    spec = tmp_path / "sixty.yaml"
    spec.write_text(re.sub(r"(?m)^    count: 4$", "    count: 30", text), encoding="utf-8")
    shutil.copytree(SPECS / "types", tmp_path / "types")
    made = run.documents(run.check(spec, allow_outside=True), ("calculation",))["calculation"]
    (inverters, *_), (few, *_) = made.tables, composed("ferry-depot").tables
    whose = {row[0] for row in inverters.cells}
    assert "-TB1…60-FC1" in whose
    assert any("In(each of -TB1…60-FC1) = 50 A" in row[5] for row in inverters.cells)
    assert len(inverters.cells) <= len(few.cells) + 10
    assert len(made.sheets) <= len(composed("ferry-depot").sheets) + 1


@pytest.mark.parametrize("name", SAMPLED)
def test_the_sections_follow_the_energy(name: str) -> None:
    """From the inverters over the boards to the supply, then what is in no circuit; each of the registry's names."""
    sections = [re.sub(r"-[0-9]+$", "", section) for section in tables(name)]
    known = [*KINDS["calculation"].sections]
    assert set(sections) <= set(known)
    sides = ("inverters", "main_board", "supply", "earthing", "data_bus", "system")
    there = [section for section in dict.fromkeys(sections) if section in sides]
    assert there == [side for side in sides if side in there]
    assert {"inverters", "main_board", "system"} <= set(there)


@pytest.mark.parametrize("name", SAMPLED)
def test_a_circuit_is_told_from_the_strings_to_the_board(name: str) -> None:
    """By the letters of IEC 81346-2 of the designations: GC strings, XD inputs, the inverter, then the AC cable WD1."""
    for section, rows in tables(name).items():
        if not section.startswith("inverters"):
            continue
        kinds = [re.sub("[0-9…]+", "", row["Designation"].split(", ")[0].removeprefix("-TB")) for row in rows]
        first = {kind: kinds.index(kind) for kind in reversed(kinds)}
        assert first["-GC"] == 0
        strings, inputs, inverter = kinds.index("-GC"), kinds.index("-XD"), kinds.index("")
        assert strings < inputs < inverter
        dc_switches, ac_cables = kinds.index("-QB") if "-QB" in kinds[:inverter] else inputs + 1, kinds[inverter:]
        assert inputs < dc_switches < inverter
        assert set(ac_cables) - {""} <= {"-FC", "-WD", "-QB", "-FB", "-FA", "-PG", "-BU", "-TA", "-XD", "-BT", "-BR"}


@pytest.mark.parametrize("name", SAMPLED)
def test_no_text_touches_another_and_the_paper_is_a4_upright(name: str) -> None:
    """A4 is 210 mm x 297 mm (ISO 216)."""
    sheets = composed(name).sheets
    assert {(sheet.width_mm, sheet.height_mm) for sheet in sheets} == {(210.0, 297.0)}
    assert [problem for sheet in sheets for problem in lint(sheet)] == []
    assert [sheet.number for sheet in sheets] == list(range(1, len(sheets) + 1))
    for sheet in sheets:
        assert f"{sheet.number} of {len(sheets)}" in {text for group in sheet.groups for text in texts(group)}


def texts(group: Group) -> list[str]:
    return [stroke.text for stroke in group.strokes if isinstance(stroke, Text)]


@pytest.mark.parametrize("name", SAMPLED)
def test_marks_from_memory_stand_beside_what_they_mark(name: str) -> None:
    """As many rows carry the mark as ratings do, each told at least once."""
    marked = {
        (rating.symbol.printed, str(rating.clause))
        for _, rating in ratings(name)
        if "from memory" in str(rating.clause)
    }
    told = {(row["Symbol"], row["Source"]) for rows in tables(name).values() for row in rows}
    assert marked
    assert marked <= told


ARITHMETIC = re.compile(r"[0-9A-Za-zα-ωΑ-ΩΔΣ,.()·*/+\-−√ ²|;]+")
PREFIXED = re.compile(r"(^|/)[kmM].")
FUNCTIONS = {"sqrt": sqrt, "max": max, "min": min, "floor": floor, "ceil": ceil, "abs": abs}


def evaluated(formula: str, numbers: dict[str, float]) -> float | None:
    """The value of a formula that is plain arithmetic in the numbers put in; None for one that is not."""
    text = (
        formula.replace("−", "-").replace("·", "*").replace("×", "*").replace("√3", "sqrt(3)").replace("√2", "sqrt(2)")
    )
    for place, symbol in enumerate(sorted(numbers, key=len, reverse=True)):
        text = re.sub(rf"(?<![A-Za-zα-ω0-9,]){re.escape(symbol)}(?![A-Za-zα-ωΔ0-9,(])", f"<{place}>", text)
    names = sorted(numbers, key=len, reverse=True)
    rest = re.sub(r"<[0-9]+>|sqrt|max|min|floor|ceil|[0-9.]+|[-+*/(), ]", "", text)
    if rest or "<" not in text:
        return None
    text = re.sub(r"<([0-9]+)>", lambda found: f"({numbers[names[int(found[1])]]!r})", text)
    try:
        return float(eval(text, {"__builtins__": {}}, FUNCTIONS))
    except (SyntaxError, ZeroDivisionError, TypeError):
        return None


def put_in(text: str) -> dict[str, tuple[float, str]]:
    """The numbers put in with their units: `N = 18; Uoc = 37.4 V (of the module)`."""
    found = {}
    for part in text.split("; "):
        match = re.fullmatch(r"(.+?) = (-?[0-9.]+)(?: ([^ (]+))?(?: \(.*\))?", part)
        if match:
            found[match[1]] = (float(match[2]), match[3] or "")
    return found


def digits(value: float) -> float:
    """Half a unit of the third significant digit: results are printed with three."""
    return 0.5 * 10 ** (floor(log10(abs(value))) - 2) if value else 0.0005


@pytest.mark.parametrize(("names", "least"), [(MOST_FORMULAS, 85), pytest.param(NAMES, 95, marks=pytest.mark.whole)])
def test_the_numbers_put_in_give_the_result(names: list[str], least: int) -> None:
    """Formula and numbers as printed, evaluated here by the rules of arithmetic, give what is printed beside them."""
    agreeing, wrong = set(), []
    for name in names:
        for rows in tables(name).values():
            for row in rows:
                numbers = {symbol: value for symbol, (value, _) in put_in(row["Numbers put in"]).items()}
                result = re.fullmatch(r"(-?[0-9.]+)(?: ([^ ]+))?", row["Result"])
                value = evaluated(row["Formula"], numbers) if result else None
                if result is None or value is None:
                    continue
                printed = float(result[1])
                # inputs have four digits; a formula of some inputs loses up to a few units of the fourth
                near = max(digits(printed), 0.003 * abs(printed)) + 1e-9
                units = {unit for _, unit in put_in(row["Numbers put in"]).values()} | {result[2] or ""}
                factors = (1.0, 1e3, 1e-3, 1e6, 1e-6) if any(PREFIXED.search(u) for u in units) else (1.0,)
                if any(abs(value * factor - printed) <= near for factor in factors):
                    agreeing.add(row["Formula"])
                else:
                    told = f"{row['Symbol']} = {row['Result']}: {row['Formula']} with {row['Numbers put in']}"
                    wrong.append(f"{name} {row['Designation']} {told} gives {value}")
    assert not wrong, "\n".join(sorted(set(wrong))[:20])
    assert len(agreeing) >= least


@pytest.mark.parametrize("name", SAMPLED)
def test_words_of_the_spec_language_are_plain(name: str) -> None:
    told = [text for sheet in composed(name).sheets for group in sheet.groups for text in texts(group)]
    assert not [text for text in told if "`" in text or "_" in text]
