"""The procedure with the network operator: a published example, dates, blanks, a page for each country."""

from __future__ import annotations

import json
from copy import deepcopy
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from sld import run
from sld.documents.cell import Cell, State
from sld.documents.document import Document
from sld.documents.procedure.document import procedure
from sld.documents.section import Form, Table
from sld.grid import known
from sld.spec import Unusable
from sld.words import ENGLISH

MODULE = {
    "rated_power": "410 W", "open_circuit_voltage": "37.4 V", "short_circuit_current": "13.9 A",
    "mpp_voltage": "31.3 V", "mpp_current": "13.1 A", "voltage_coefficient": "-0.26 %/K",
}  # fmt: skip
INPUTS = [{"count": 2, "current_max": "16 A", "short_circuit_current_max": "22 A"}]
TYPE = {"dc_voltage_max": "1000 V", "mpp_voltage_min": "160 V", "mpp_voltage_max": "850 V", "inputs": INPUTS}
STRINGS = [{"strings": [{"module": "M", "modules_in_series": 12}]}]


def spec(country: str | None = "GB", **supply: Any) -> dict[str, Any]:
    """Nine kilowatts on three phases, commissioned on a day."""
    whole = {
        "project": {"title": "Nine kilowatts", "commissioned": "2026-05-04"},
        "site": {"temperature_min": "-10 °C", "temperature_max": "32 °C"},
        "supply": {"earthing_system": "TN-S", **({"country": country} if country else {}), **supply},
        "types": {"modules": {"M": MODULE}, "inverters": {"T": {"rated_power": "9 kW", "phases": 3, **TYPE}}},
        "inverters": {"roof": {"type": "T", "inputs": STRINGS}},
    }
    return deepcopy(whole)  # tests change it


def made(data: dict[str, Any]) -> Document:
    checked = run.check_mapping(data)
    return procedure(checked.system, checked.ratings, checked.findings, ())


@cache
def of_country(code: str) -> Document:
    return made(spec(code))


def fields(document: Document, name: str) -> dict[str, Cell]:
    form = next(each for each in document.sections if isinstance(each, Form) and each.name == name)
    return {ENGLISH.say(caption): cell for caption, cell in form.fields}


def rows(document: Document, name: str) -> list[tuple[str, ...]]:
    tables = [each for each in document.sections if isinstance(each, Table) and each.name == name]
    return [tuple(map(ENGLISH.say, row)) for table in tables for row in table.rows]


def test_the_published_example_of_great_britain() -> None:
    """westernpower.co.uk: 9,000 / (230 × 3) = 13.04 A per phase; up to 16 A: notify within 28 days."""
    told = {caption: ENGLISH.say(cell) for caption, cell in fields(of_country("GB"), "procedure").items()}
    assert told["Current of a line"] == "9 kVA three-phase: 9000 / (3 × 230) = 13.04 A a line"
    assert told["Decisive here"] == "current of the most loaded line ≤ 16 A; here 13.04 A"
    assert told["Procedure"] == (
        "connect, then notify the network operator (G98 Form B); within 28 days after commissioning"
    )
    assert told["Standing"] == "confirmed"
    assert told["What would change it"] == "current of the most loaded line > 16 A"


def test_the_last_day_is_counted_from_commissioning() -> None:
    """28 days after 2026-05-04 is 2026-06-01."""
    assert (
        "within 28 days after commissioning", "2026-06-01", "connect, then notify the network operator (G98 Form B)",
        "EREC G98, Issue 1", "confirmed",
    ) in rows(of_country("GB"), "grid_tasks")  # fmt: skip


def test_planned_days_count_until_the_true_ones_are_known() -> None:
    """Within 28 days after 2026-09-01 is by 2026-09-29; what is due before work begins is due on the day it begins."""
    data = spec("GB")
    del data["project"]["commissioned"]
    data["notification"] = {"work_begins": "2026-08-03", "commissioning_planned": "2026-09-01"}
    assert {row[:2] for row in rows(made(data), "grid_tasks")} >= {
        ("within 28 days after commissioning", "2026-09-29"),
        ("before work begins", "2026-08-03"),
    }


def test_without_the_day_there_is_a_line_to_write_on() -> None:
    data = spec()
    del data["project"]["commissioned"]
    dates = {row[1] for row in rows(made(data), "grid_tasks")}
    assert dates == {"____________"}


SECOND = {"type": "T", "inputs": STRINGS}
BATTERY = {"converter_power": "3 kVA", "energy": "10 kWh"}


@pytest.mark.parametrize(
    ("changes", "current", "form"),
    [
        # 18 000 / (3 · 230) = 26.09 A: an application
        ({"inverters": {"roof": SECOND, "barn": {**SECOND, "status": "existing"}}}, "26.09 A", "G99 A1-1"),
        ({"inverters": {"roof": SECOND, "barn": {**SECOND, "status": "future"}}}, "13.04 A", "G98 Form B"),
        # 12 000 / (3 · 230) = 17.39 A: a battery with a converter counts
        ({"batteries": {"store": BATTERY}}, "17.39 A", "G99 A1-1"),
        ({"batteries": {"store": {**BATTERY, "status": "future"}}}, "13.04 A", "G98 Form B"),
    ],
)
def test_existing_and_new_count_and_future_does_not(changes: dict[str, Any], current: str, form: str) -> None:
    told = fields(made({**spec(), **changes}), "procedure")
    assert current in ENGLISH.say(told["Current of a line"])
    assert form in ENGLISH.say(told["Procedure"])


def test_single_phase_units_on_one_line_add_to_a_third_of_the_three_phase_ones() -> None:
    """9000 / (3 · 230) + 2000 / 230 = 13.04 + 8.70 = 21.74 A."""
    data = spec()
    data["types"]["inverters"]["S"] = {"rated_power": "2 kW", "phases": 1, **TYPE}
    data["inverters"]["shed"] = {"type": "S", "line": "L2", "inputs": STRINGS}
    assert ENGLISH.say(fields(made(data), "procedure")["Current of a line"]) == (
        "9 kVA three-phase and 2 kVA on one line: 9000 / (3 × 230) + 2000 / 230 = 21.74 A a line"
    )


@pytest.mark.parametrize(("batteries", "asked"), [({}, False), ({"store": BATTERY}, True)])
def test_the_paper_for_storage_is_asked_where_there_is_one(batteries: dict[str, Any], asked: bool) -> None:
    papers = {row[0] for row in rows(made({**spec("DE"), "batteries": batteries}), "grid_papers")}
    assert ("Data sheet of the storage, on the operator's form" in papers) is asked


def test_no_two_countries_give_the_same_procedure() -> None:
    pages = [tuple(rows(of_country(code), "grid_limits")) for code in known()]
    assert len(set(pages)) == len(pages)


@pytest.mark.parametrize("code", known())
def test_every_cell_says_what_it_rests_on(code: str) -> None:
    """What the file of a country says is confirmed or not; nothing of it passes for the spec's."""
    document = of_country(code)
    table = next(each for each in document.sections if isinstance(each, Table) and each.name == "grid_limits")
    for row in table.rows:
        states = {cell.state for cell in (row[0], row[1], row[3], row[4], row[5])}
        confirmed = ENGLISH.say(row[5]) == "confirmed"
        assert states == {State.LAID_DOWN if confirmed else State.UNCONFIRMED}


@pytest.mark.parametrize("code", known())
def test_no_address_takes_the_width_of_the_conditions(code: str) -> None:
    """A word cannot be broken: the path behind a host stays on the page of the country alone."""
    words = [word for row in rows(of_country(code), "grid_limits") for word in row[4].split()]
    assert max(map(len, words)) <= 31, max(words, key=len)


def test_a_country_that_there_is_not_is_refused() -> None:
    with pytest.raises(Unusable, match="there is no country `QQ`"):
        run.check_mapping(spec("QQ"))


def test_without_a_country_no_procedure_is_invented() -> None:
    told = fields(made(spec(None)), "procedure")
    assert ENGLISH.say(told["Grid rules"]) == "the country is not given; generic rules: EN 50549-1, 2019"
    assert told["Grid rules"].state is State.ASSUMED
    assert ENGLISH.say(told["Procedure"]).startswith("no procedure is known here: ask the network operator")


def test_what_sources_disagree_on_is_printed_both_ways() -> None:
    """Switzerland: 3.6 kVA of one operator decides, 3.7 kVA of the other is named."""
    told = {caption: ENGLISH.say(cell) for caption, cell in fields(of_country("CH"), "procedure").items()}
    assert "≥ 3.6 kVA" in told["Decisive here"]
    assert "> 3.7 kVA (Energie Gossau" in told["Another source"]
    assert told["Standing"] == "sources disagree"


def test_what_an_operator_has_otherwise_is_printed_as_such(tmp_path: Path) -> None:
    own = '[[replace]]\nentry = "procedures.connect_and_notify"\nreason = "conditions 2026"\ndays = 14\n'
    (tmp_path / "merren.toml").write_text(f'by = "Merren network"\n\n{own}', encoding="utf-8")
    path = tmp_path / "nine.json"
    path.write_text(json.dumps(spec(grid_rules="merren.toml")), encoding="utf-8")
    checked = run.check(path)
    told = fields(procedure(checked.system, checked.ratings, (), ()), "procedure")
    assert "within 14 days after commissioning" in ENGLISH.say(told["Procedure"])
    assert ENGLISH.say(told["Standing"]) == "replaced for this place"
    assert "Merren network: conditions 2026" in ENGLISH.say(told["Rule"])
    assert path in checked.source.files()
    assert tmp_path / "merren.toml" in checked.source.files()


def test_what_another_source_says_is_told_with_where_that_is_from() -> None:
    told = ENGLISH.say(fields(of_country("IT"), "procedure")["Another source"])
    assert told.startswith("rated AC power of inverters and battery converters ≤ 200 kW (from memory")
    assert told.endswith("; the cautious one is used")
