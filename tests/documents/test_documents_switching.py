"""The switching sheet: the order, every source, what stays live, and no order of switching on that nobody stated."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

import pytest
from test_documents_procedure import STRINGS, rows, spec

from sld import run
from sld.documents.document import Document
from sld.documents.drawing.answers import ac_isolation
from sld.documents.switching.document import switching
from sld.words import ENGLISH

BLANK = "____________"
STORE = {
    "inverter": "roof", "voltage_min": "40 V", "voltage_max": "58 V", "short_circuit_current": "4 kA",
    "dc_circuit": [{"kind": "fuse", "switch": True}, {"kind": "cable", "length": "2 m"}],
}  # fmt: skip


def made(data: dict[str, Any]) -> Document:
    checked = run.check_mapping(data)
    return switching(checked.system, checked.ratings, checked.findings, ())


def plant(**more: Any) -> dict[str, Any]:
    """A main switch, a breaker and an isolator to one inverter, DC isolators at it and behind a cable on the roof.

    A circuit of an input is written from the strings on.
    """
    data = spec("GB", **more)
    data["boards"] = {"main": {"circuit": [{"kind": "main_switch", "rated_current": "63 A"}]}}
    data["inverters"]["roof"] |= {
        "connected_to": "main",
        "circuit": [{"kind": "breaker", "rated_current": "20 A"}, {"kind": "isolator", "lockable": True}],
        "inputs": [
            {
                "circuit": [
                    {"kind": "isolator", "lockable": False},
                    {"kind": "cable", "length": "9 m"},
                    {"kind": "isolator"},
                ],
                **deepcopy(STRINGS[0]),
            }
        ],
    }
    return data


def order(document: Document, name: str, skip: int = 0) -> list[tuple[str, str]]:
    return [(row[skip], row[skip + 2]) for row in rows(document, name)]


def test_ac_comes_first_then_dc_at_the_inverter_then_at_the_roof() -> None:
    """Three makers' and trade pages agree on AC, DC, roof (handover notes); the breaker is nearer to the supply."""
    assert order(made(plant()), "isolate_source", skip=1) == [
        ("1", "-TB1-FC1"),
        ("1", "-TB1-QB1"),
        ("2", "-TB1-QB2"),
        ("3", "-TB1-QB3"),
        ("4", ""),
        ("5", ""),
        ("6", ""),
        ("7", ""),
    ]


def test_the_site_has_its_main_switch_between_ac_and_dc() -> None:
    steps = order(made(plant()), "isolate_site")
    assert steps[2:5] == [("2", "-UC1-QB1"), ("3", "-TB1-QB2"), ("4", "-TB1-QB3")]


def test_what_locks_is_told_as_the_spec_says_it() -> None:
    (said,) = [row[3] for row in rows(made(plant()), "isolate_site") if row[1].startswith("Lock")]
    assert (
        said == "lockable: -TB1-QB1; not lockable: -TB1-QB3; not stated whether lockable: -TB1-FC1, -UC1-QB1, -TB1-QB2"
    )


def test_a_step_without_a_device_is_a_blank_and_stays() -> None:
    found = rows(made(spec("GB")), "isolate_site")
    assert [row[:3] for row in found if row[0] in ("2", "4")] == [
        ("2", "Open the main switch", "-UC1-QB1"),
        ("4", "Open the DC side at boxes or the roof", "–"),
    ]


def test_a_device_that_the_spec_does_not_mention_never_passes_for_one_that_is_there() -> None:
    found = {row[2]: row[3] for row in rows(made(spec("GB")), "isolate_site")}
    assert found["-TB1-QB1"].startswith("isolator")
    assert found["-TB1-QB1"].endswith("assumed")


@pytest.mark.parametrize(("stated", "told"), [("300 s", "T: 300 s"), (None, BLANK)])
def test_the_time_of_discharge_is_the_makers_or_a_blank(stated: str | None, told: str) -> None:
    data = plant()
    if stated:
        data["types"]["inverters"]["T"]["discharge_time"] = stated
    (said,) = [row[3] for row in rows(made(data), "isolate_site") if row[1].startswith("Wait")]
    assert said == told


@pytest.mark.parametrize(
    ("stated", "told"),
    [(["battery on", "DC on", "AC on"], ["battery on", "DC on", "AC on"]), ([], [BLANK] * 4)],
)
def test_the_order_of_switching_on_is_the_makers_or_lines(stated: list[str], told: list[str]) -> None:
    """Published orders contradict each other (AC first in one, last in another): none is taken for granted."""
    data = plant()
    data["types"]["inverters"]["T"]["switching_on"] = stated
    assert [row[2] for row in rows(made(data), "restore")] == told


def test_every_source_is_listed_with_what_opens_it() -> None:
    """A battery on the DC side of an inverter has no AC side; what is only planned is no source."""
    data = {**plant(), "batteries": {"store": STORE}}
    data["inverters"]["later"] = {"type": "T", "status": "future", "inputs": STRINGS}
    found = {row[1]: row[3:5] for row in rows(made(data), "source_list")}
    assert found == {
        "network": ("-UC1-QB1", "none"),
        "inverter": ("-TB1-FC1, -TB1-QB1", "-TB1-QB2, -TB1-QB3, -GB1-FC1"),
        "battery": ("–", "-GB1-FC1"),
    }


def test_what_stays_live_is_told_with_its_voltage() -> None:
    """12 · 37.4 V · (1 + 0.0026 · 35) = 489.6 V at -10 °C."""
    found = {row[0]: row[2:] for row in rows(made(plant()), "stays_live")}
    assert found["the side of the network"] == ("-UC1-QB1", "400 V")
    assert found["strings and their cables, in daylight"] == ("-TB1-QB3, -TB1-QB2", "490 V")


def test_a_switch_built_in_opens_the_dc_side_and_a_backed_up_board_does_not() -> None:
    """An inverter with a DC switch of its own and a backup output: what is behind that output is no DC side."""
    data = plant()
    kind = data["inverters"]["roof"]["type"]
    data["types"]["inverters"][kind] |= {
        "dc_switch": True,
        "backup": {"power": "4 kVA", "short_circuit_current": "25 A"},
    }
    data["inverters"]["roof"]["inputs"] = deepcopy(STRINGS)
    data["boards"]["kept"] = {"fed_from_backup": "roof", "circuit": [{"kind": "main_switch", "rated_current": "40 A"}]}
    document = made(data)
    dc = [row for row in rows(document, "isolate_source") if row[1] in ("2", "3")]
    assert [(row[1], row[3], row[4]) for row in dc] == [("2", "-TB1", "built-in DC switch"), ("3", "–", "–")]
    sources = {row[0]: (row[3], row[4]) for row in rows(document, "source_list")}
    assert sources["-TB1"] == ("-TB1-FC1, -TB1-QB1", "-TB1")
    assert sources["-GA1"][0] == "-UC1-QB1"
    live = {row[0]: row[2] for row in rows(document, "stays_live")}
    assert live["strings and their cables, in daylight"] == "-TB1"
    assert live["the side of the network"] == "-UC1-QB1"


def test_what_is_opened_at_one_source_is_not_told_again_as_far_from_another() -> None:
    """The fuse at the battery is far from the inverter that the battery is behind."""
    data = plant()
    far = [{"kind": "cable", "length": "2 m"}, {"kind": "fuse", "switch": True}, {"kind": "cable", "length": "1 m"}]
    data["batteries"] = {"store": {**STORE, "energy": "5 kWh", "dc_circuit": far}}
    opened = [name for step, name in order(made(data), "isolate_site") if step in ("3", "4")]
    assert opened.count("-GB1-FC1") == 1


@pytest.mark.parametrize(
    ("rooms", "isolators"),
    [
        (["cellar"], "-TB1-QB1…3; cellar"),
        (["cellar", "loft", "cellar", "loft"], "8 devices; cellar, loft"),  # 3, 1, 3, 1: too many to be named
        (["cellar", "loft", "shed", "barn"], "8 devices; 4 places"),
    ],
)
def test_the_summary_names_isolators_and_places_or_counts_them(rooms: list[str], isolators: str) -> None:
    """42 letters and three places at most, our own rule."""
    data = plant()
    unit = data["inverters"].pop("roof")
    data["inverters"] = {
        f"i{n}": {**deepcopy(unit), "circuit": [{"kind": "breaker", "rated_current": "20 A"}]
                  + [{"kind": "isolator", "location": room} for _ in range(1 + n % 2 * 2)]}
        for n, room in enumerate(rooms, 1)
    }  # fmt: skip
    told = {ENGLISH.say(name): ENGLISH.say(cell) for name, cell in ac_isolation(run.check_mapping(data).system)}
    assert told["AC isolators"] == isolators
