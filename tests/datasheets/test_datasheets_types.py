"""`sld types`: what a table of data sheets becomes, what is refused, and what is named as missing."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml
from typer.testing import CliRunner, Result

import sld
from sld.cli.app import app
from sld.datasheets.sheet_csv import UnusableTable, records

ROOT = Path(__file__).parents[2]
EXAMPLES = ROOT / "specs" / "types"


def typed(*arguments: object) -> Result:
    return CliRunner().invoke(app, ["types", *map(str, arguments)], catch_exceptions=False)


def from_csv(text: str, folder: Path) -> dict[str, Any]:
    """Return the values of the one row of a table."""
    path = folder / "table.csv"
    path.write_text(text, encoding="utf-8")
    (record,) = records(path)
    return dict(record.values)


@pytest.mark.parametrize(("name", "kind", "count"), [("modules", "modules", 2), ("inverters", "inverters", 1)])
def test_the_examples_become_types_that_a_spec_takes(name: str, kind: str, count: int, tmp_path: Path) -> None:
    out = tmp_path / "types.yaml"
    result = typed("add", EXAMPLES / f"{name}.csv", "-o", out)
    assert (result.exit_code, result.stderr) == (0, "")
    types = yaml.safe_load(out.read_text(encoding="utf-8"))["types"][kind]
    assert len(types) == count
    spec = tmp_path / "spec.yaml"
    new = CliRunner().invoke(app, ["new", str(spec)], catch_exceptions=False)
    assert new.exit_code == 0
    spec.write_text(f"include: [types.yaml]\n{spec.read_text(encoding='utf-8')}", encoding="utf-8")
    assert sld.load(spec).worst is not None


HEADINGS = [
    # heading and cell as data sheets and lists have them -> the key and value of a spec
    ("Voc (V)", "37.4", "open_circuit_voltage", "37.4 V"),
    ("Open-circuit voltage [V]", "37.4", "open_circuit_voltage", "37.4 V"),
    ("Uoc", "37.4 V", "open_circuit_voltage", "37.4 V"),
    ("Imp [A]", "13.1", "mpp_current", "13.1 A"),
    ("TK Uoc [%/K]", "-0.26", "voltage_coefficient", "-0.26 %/K"),
    ("Max series fuse [A]", "25", "series_fuse_max", "25 A"),
    ("Pmax [kW]", "0.41", "rated_power", "0.41 kW"),
]


@pytest.mark.parametrize(("heading", "cell", "key", "value"), HEADINGS)
def test_headings_in_the_words_of_the_trade(heading: str, cell: str, key: str, value: str, tmp_path: Path) -> None:
    assert from_csv(f"Name,{heading}\nA,{cell}\n", tmp_path) == {key: value}


def test_semicolons_decimal_commas_inputs_and_words(tmp_path: Path) -> None:
    text = "Name;Phases;MPP inputs;Input Imax [A];Input Isc max [A];Galvanic separation\nT;3;2;12,5;16;no\n"
    assert from_csv(text, tmp_path) == {
        "phases": 3,
        "galvanic_separation": False,
        "inputs": [{"count": 2, "current_max": "12.5 A", "short_circuit_current_max": "16 A"}],
    }


def test_a_yes_and_a_name_with_a_comma_are_written_as_a_spec_reads_them(tmp_path: Path) -> None:
    path = tmp_path / "table.csv"
    path.write_text('Name,Make,Phases,Galvanic separation\n"T, long",Firm: works,3,yes\n', encoding="utf-8")
    text = typed("add", path).stdout
    assert "galvanic_separation: true" in text
    written = yaml.safe_load(text)["types"]["inverters"]["T, long"]
    assert (written["make"], written["galvanic_separation"]) == ("Firm: works", True)


UNUSABLE = [
    ("", "there are no headings"),
    ("Name,Uoc [V]\n", "there is no row below the headings"),
    ("Name,Uoc [V]\nA,37,1\n", ":2: 3 cells below 2 headings"),
    ("Name,Open voltige [V]\nA,37\n", "no value of modules is called Open voltige [V]"),
    ("Uoc [V]\n37\n", ":2: the row has no name, make or model"),
    ("Name,Uoc [V]\nA,37\nA,38\n", "two rows are called A"),
]


@pytest.mark.parametrize(("text", "told"), UNUSABLE)
def test_a_table_that_cannot_be_read(text: str, told: str, tmp_path: Path) -> None:
    path = tmp_path / "table.csv"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(UnusableTable) as caught:
        records(path)
    assert told in str(caught.value)
    result = typed("add", path)
    assert (result.exit_code, result.stdout) == (2, "")
    assert str(path) in result.stderr


HEAD = "Name,Pmax [W],Uoc [V],Isc [A],Umpp [V],Impp [A],TK Uoc [%/K]\n"
GOOD = "Good,410,37.4,13.9,31.3,13.1,-0.26\n"
IMPOSSIBLE = [
    # a slip of the table, what the row is told; the first row is good and is kept
    ("410,31.3,13.9,37.4,13.1,-0.26", "MPP voltage 37.4 V is not below the open-circuit voltage"),
    ("410,37.4,13.1,31.3,13.9,-0.26", "MPP current 13.9 A is not below the short-circuit current"),
    ("4100,37.4,13.9,31.3,13.1,-0.26", "rated power 4100 W is not MPP voltage times current, 410 W"),
    ("410,37.4,13.9,31.3,13.1,0.26", "must be at most 0 %/K"),
    ("410,37.4,x,31.3,13.1,-0.26", "`x` is not a number"),
]


@pytest.mark.parametrize(("row", "told"), IMPOSSIBLE)
def test_a_row_that_cannot_be_is_refused_and_the_others_are_kept(row: str, told: str, tmp_path: Path) -> None:
    path = tmp_path / "table.csv"
    path.write_text(f"{HEAD}{GOOD}Bad,{row}\n", encoding="utf-8")
    result = typed("add", path)
    assert result.exit_code == 1
    assert "table.csv, row 3: Bad is left out: " in result.stderr
    assert told in result.stderr
    assert list(yaml.safe_load(result.stdout)["types"]["modules"]) == ["Good"]


def test_what_is_missing_is_named_and_nothing_put_in_its_place(tmp_path: Path) -> None:
    path = tmp_path / "table.csv"
    path.write_text("Name,Uoc [V],Isc [A]\nA,37.4,13.9\n", encoding="utf-8")
    result = typed("add", path)
    assert "A lacks rated_power, mpp_voltage, mpp_current" in result.stderr
    assert "# mpp_current:  # needed, not in the table: Current at maximum power" in result.stdout
    written = yaml.safe_load(result.stdout)["types"]["modules"]["A"]
    assert written == {"open_circuit_voltage": "37.4 V", "short_circuit_current": "13.9 A"}


def test_a_file_that_is_there_stays(tmp_path: Path) -> None:
    out = tmp_path / "types.yaml"
    out.write_text("mine", encoding="utf-8")
    result = typed("add", EXAMPLES / "modules.csv", "-o", out)
    assert result.exit_code == 2
    assert "is there already and stays as it is" in result.stderr
    assert out.read_text(encoding="utf-8") == "mine"


def test_words_that_no_type_has() -> None:
    result = typed("find", "no-such-type-anywhere")
    assert (result.exit_code, result.stdout) == (1, "")
    assert "no type of the open tables has no-such-type-anywhere in its name" in result.stderr
