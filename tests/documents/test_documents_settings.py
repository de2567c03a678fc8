"""Settings: expected values beside lines for those read back, the set that holds, interface protection, export."""

from __future__ import annotations

from typing import Any

import pytest
from test_documents_procedure import fields, rows, spec

from sld import run
from sld.documents.cell import State
from sld.documents.document import Document
from sld.documents.section import Table
from sld.documents.settings.document import settings
from sld.grid import known
from sld.spec import Unusable
from sld.words import ENGLISH

BLANK = "____________"


def made(data: dict[str, Any]) -> Document:
    checked = run.check_mapping(data)
    return settings(checked.system, checked.ratings, checked.findings, ())


def with_set(code: str, called: str, **more: Any) -> dict[str, Any]:
    data = spec(code)
    data["inverters"]["roof"]["network_settings"] = {"set": called, **more}
    return data


def expected(document: Document) -> dict[str, str]:
    return {row[1]: row[2] for row in rows(document, "settings_values")}


@pytest.mark.parametrize(
    ("data", "function", "told"),
    [
        # 0.8 · 230 V = 184 V, 1.1 · 230 V = 253 V; the values of the sets are from memory, so to be confirmed
        (spec("GB"), "Undervoltage U<", "expected 184 V (0.8 Un), 2.5 s for G98, Issue 1: confirm"),
        (spec("DE"), "Overvoltage, 10-minute mean",
         "expected 253 V (1.1 Un), 0.1 s for VDE-AR-N 4105, 2018-11: confirm"),
        (with_set("AU", "Australia C"), "Underfrequency f<",
         "expected 45 Hz, 5 s for Australia C, 4777.2:2020: confirm"),
        (with_set("AU", "AUSTRALIA-A"), "Underfrequency f<",
         "expected 47 Hz, 1 s for Australia A, 4777.2:2020: confirm"),
        (spec("GB"), "Rate of change of frequency", "expected 1 Hz/s, 0.5 s for G98, Issue 1: confirm"),
        (spec("ZA"), "Wait before reconnection", "expected 60 s for NRS 097-2-1, NRS 097-2-1:2017: confirm"),
    ],
)  # fmt: skip
def test_a_value_that_is_not_confirmed_is_expected_for_its_set_and_edition(
    data: dict[str, Any], function: str, told: str
) -> None:
    assert expected(made(data))[function] == told


@pytest.mark.parametrize("code", known())
def test_every_value_has_lines_for_what_is_read_back_and_none_is_filled_in(code: str) -> None:
    for row in rows(made(spec(code)), "settings_values"):
        assert row[4:] == (BLANK, BLANK)


@pytest.mark.parametrize("code", ["IE", "BE", "FR", "ES", "NL", "PL", "CH"])
def test_where_no_value_is_known_there_are_lines(code: str) -> None:
    found = expected(made(spec(code)))
    assert set(found.values()) == {BLANK}
    assert set(found) >= {"Undervoltage U<", "Overvoltage U>", "Underfrequency f<", "Overfrequency f>"}


@pytest.mark.parametrize(
    ("data", "told"),
    [
        # 13.04 A a line is at most 16 A: G98; twice that is above: G99
        (spec("GB"), "not given; by the rules G98, Issue 1: confirm"),
        ({**spec("GB"), "inverters": {"roof": {**spec("GB")["inverters"]["roof"], "count": 2}}},
         "not given; by the rules G99, Issue 1: confirm"),
        (with_set("DE", "VDE-AR-N 4105:2018-11", edition="2018-11"), "VDE-AR-N 4105:2018-11, 2018-11"),
    ],
)  # fmt: skip
def test_which_set_holds(data: dict[str, Any], told: str) -> None:
    assert list(map(ENGLISH.say, fields(made(data), "settings_sets").values())) == [told]


def test_of_several_sets_none_is_chosen_silently() -> None:
    (told,) = map(ENGLISH.say, fields(made(spec("AU")), "settings_sets").values())
    assert told.startswith("not given; one of Australia A, 4777.2:2020; Australia B")
    assert told.endswith("ask the network operator")


@pytest.mark.parametrize("called", ["G97", "VDE-AR-N 4105"])
def test_a_set_that_the_country_does_not_have_is_refused(called: str) -> None:
    with pytest.raises(Unusable) as caught:
        run.check_mapping(with_set("GB", called))
    (finding,) = caught.value.findings
    assert finding.code == "SP28"
    assert finding.at == ("inverters", "roof", "network_settings", "set")
    assert finding.message == f"there is no settings set `{called}` in the grid rules of GB"
    assert finding.remedy == "write one of G98, G99, or generic"


@pytest.mark.parametrize(("code", "called"), [("GB", "generic"), ("GB", "g98 type tested"), (None, "anything")])
def test_a_set_that_is_taken(code: str | None, called: str) -> None:
    data = spec(code)
    data["inverters"]["roof"]["network_settings"] = {"set": called}
    made(data)


@pytest.mark.parametrize(
    ("power", "told"),
    [
        ("30 kW", "interface protection may be the one built into the inverters"),  # DE: at 30 kVA still built in
        ("31 kW", "interface protection by an external relay that opens a separate switch"),
    ],
)
def test_the_rule_that_lets_the_built_in_protection_serve_is_said(power: str, told: str) -> None:
    data = spec("DE")
    data["types"]["inverters"]["T"]["rated_power"] = power
    form = {caption: ENGLISH.say(cell) for caption, cell in fields(made(data), "interface").items()}
    assert form["Asked for"] == told
    assert form["Rule"].startswith("VDE-AR-N 4105 6.1, 2018-11")


@pytest.mark.parametrize(
    ("code", "limit", "told"),
    [
        # G100 counts amperes at the connection: 6900 / (3 · 230) = 10 A
        ("GB", "6900 W", "6900 / (3 × 230) = 10 A a line"),
        ("DE", "6900 W", None),
        ("GB", None, None),
    ],
)
def test_the_feed_in_limit_is_counted_as_the_country_does(code: str, limit: str | None, told: str | None) -> None:
    document = made(spec(code, **({"export_limit": limit} if limit else {})))
    cell = fields(document, "export").get("The same as a current, as it is counted here")
    assert (cell and ENGLISH.say(cell)) == told


def test_the_power_factor_stands_beside_the_current_that_follows_from_it() -> None:
    """9000 W / (0.9 · √3 · 400 V) = 14.43 A; at unity 12.99 A."""
    data = spec("DE")
    data["inverters"]["roof"] |= {"power_factor": 0.9, "reactive_power": "absorbed"}
    data["types"]["inverters"]["T"]["apparent_power_max"] = "10 kVA"
    ((_, mode, current, *_),) = rows(made(data), "reactive")
    assert mode == "power factor 0.9, reactive power absorbed"
    assert current == "14.4 A"


def test_what_the_country_says_is_told_from_what_the_spec_says() -> None:
    tables = [each for each in made(spec("GB")).sections if isinstance(each, Table) and each.name == "settings_values"]
    states = {row[2].state for table in tables for row in table.rows}
    assert states == {State.UNCONFIRMED}
