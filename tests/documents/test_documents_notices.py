"""Notices: those that the country asks for, at devices that there are, with data of this installation."""

from __future__ import annotations

from typing import Any

import pytest
from test_documents_procedure import rows, spec
from test_documents_switching import plant

from sld import run
from sld.documents.document import Document
from sld.documents.notices.document import notices
from sld.grid import known


def made(data: dict[str, Any]) -> Document:
    checked = run.check_mapping(data)
    return notices(checked.system, checked.ratings, checked.findings, ())


def of_country(code: str) -> dict[str, Any]:
    data = plant()
    data["supply"]["country"] = code
    return data


@pytest.mark.parametrize("code", known())
def test_every_country_asks_for_notices_with_clause_and_edition(code: str) -> None:
    found = rows(made(of_country(code)), "notices")
    assert found
    assert all(row[1].startswith("text after ") for row in found)


def test_a_notice_says_what_its_standard_asks_and_nothing_is_invented() -> None:
    """Australia: two isolators that are not ganged at one inverter; 12 · 37.4 V · (1 + 0.0026 · 35) = 489.6 V."""
    found = {row[0]: row[1:4] for row in rows(made(of_country("AU")), "notices")}
    assert found["Several DC sources: open all isolators"] == (
        "text after AS/NZS 5033 5.5.2.1, AS/NZS 5033:2021", "-TB1", "-TB1: 2 DC isolators",
    )  # fmt: skip
    assert found["Isolators do not make the array dead"][2] == "highest DC voltage 490 V"
    assert found["Shutdown procedure"][2] == "-UC1-QB1, -TB1-FC1, -TB1-QB1…3"


@pytest.mark.parametrize(
    ("data", "notice"),
    [
        (spec("AU"), "Several DC sources: open all isolators"),
        (spec("AU"), "Live without the network: backup supply"),
        (spec("US"), "Breaker of the source not to be moved"),
        (spec("PL"), "Plan for the fire service"),
    ],
)  # fmt: skip
def test_a_notice_for_what_is_not_there_is_left_out(data: dict[str, Any], notice: str) -> None:
    assert notice not in {row[0] for row in rows(made(data), "notices")}


@pytest.mark.parametrize(("modules", "told"), [(15, False), (16, True)])
def test_a_limit_of_a_notice(modules: int, told: bool) -> None:
    """Poland above 6.5 kWp: 15 · 410 W = 6.15 kWp, 16 · 410 W = 6.56 kWp."""
    data = of_country("PL")
    data["inverters"]["roof"]["inputs"][0]["strings"][0] = {"module": "M", "modules_in_series": modules}
    assert ("Sign for the fire service" in {row[0] for row in rows(made(data), "notices")}) is told


def test_each_device_has_its_labels() -> None:
    found = [(row[2], row[0]) for row in rows(made(of_country("GB")), "notice_labels")]
    assert ("-TB1-QB2", "DC isolator of the PV array; live in daylight") in found
    assert ("-UC1-QB1", "Several sources: isolate all of them") in found
    assert len(found) == len(set(found))


def test_whatever_isolates_the_array_has_the_label_of_an_isolator() -> None:
    """Of two DC circuit-breakers the one that its maker marks as suitable for isolation, here that of the strings."""
    data = of_country("GB")
    data["inverters"]["roof"]["inputs"][0]["circuit"] = [{"kind": "breaker", "isolating": True}, {"kind": "breaker"}]
    notice = "DC isolator of the PV array; live in daylight"
    labelled = {row[2] for row in rows(made(data), "notice_labels") if row[0] == notice}
    assert {"-TB1-FC2", "-TB1-FC3"} & labelled == {"-TB1-FC3"}


def test_what_of_the_data_is_not_known_is_to_be_filled_in() -> None:
    """Germany's plan for the fire service names voltage and devices to disconnect: 12 · 37.4 V · 1.091 = 489.6 V."""
    data = of_country("DE")
    for each in (data["boards"]["main"], data["inverters"]["roof"], data["inverters"]["roof"]["inputs"][0]):
        each["circuit"] = []
    found = {row[0]: row[3] for row in rows(made(data), "notices")}
    assert found["Plan for the fire service"] == "highest DC voltage 490 V; not given"
