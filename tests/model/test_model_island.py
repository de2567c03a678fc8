"""What is fed while the network is away: where it hangs in the tree, and names that lead nowhere."""

from __future__ import annotations

from typing import Any

import pytest
from small_specs import UNIT, spec, system

from sld.model.island import islands
from sld.spec.references import dangling

BACKUP = {"types.inverters.t.backup": {"power": "5 kVA", "separates_neutral": True, "neutral_earth_link": True}}
SAFE = {"fed_from_backup": "roof", "circuit": [{"kind": "main_switch"}]}
SWITCH = {"kind": "changeover", "second_source": "set"}
SET = {"power": "15 kVA", "neutral_earthed": True, "circuit": [{"kind": "breaker"}]}
UNIT_AT_MAIN = {"inverters.roof": {**UNIT, "connected_to": "main"}}
BACKED = {**BACKUP, **UNIT_AT_MAIN, "boards": {"main": {}, "safe": SAFE}}
SWITCHED = {
    **UNIT_AT_MAIN,
    "boards": {"main": {}, "safe": {"fed_from": "main", "circuit": [{"kind": "breaker"}, SWITCH]}},
    "generators": {"set": SET},
}


def _told(changes: dict[str, Any]) -> list[tuple[str, str, str]]:
    return [(each.code, ".".join(map(str, each.at)), str(each.message)) for each in dangling(spec(changes))]


def test_a_board_at_a_backup_output_hangs_on_its_inverter() -> None:
    made = system(BACKED)
    assert [each.key for each in made.upstream("boards.safe")][:2] == ["boards.safe.circuit.0", "inverters.roof"]
    (island,) = islands(made)
    assert (island.root, island.linked, island.separated) == ("boards.safe.circuit.0", True, True)


def test_a_generator_hangs_on_its_change_over_switch_and_in_its_enclosure() -> None:
    made = system(SWITCHED)
    assert made.children["boards.safe.circuit.1"] == ("boards.safe", "generators.set.circuit.0")
    assert made.devices["generators.set.circuit.0"].enclosure == made.devices["boards.safe.circuit.1"].enclosure
    (island,) = islands(made)
    assert [each.key for each in island.sources] == ["generators.set"]
    assert island.linked


def test_the_loads_of_an_island_are_those_behind_its_switch() -> None:
    loads = {name: {"connected_to": board, "current": "10 A"} for name, board in (("pump", "safe"), ("oven", "main"))}
    made = system({**SWITCHED, "loads": loads})
    (island,) = islands(made)
    assert [each.key for each in island.loads(made)] == ["loads.pump"]


@pytest.mark.parametrize(
    ("earthed", "switch", "linked", "separated"),
    [
        (True, {}, True, True),
        (False, {}, False, True),
        (False, {"neutral_earth_link": True}, True, True),
        (True, {"poles": 4}, True, True),
        (True, {"poles": 3}, True, False),
    ],
)
def test_where_the_neutral_is_earthed_and_opened(
    earthed: bool, switch: dict[str, Any], linked: bool, separated: bool
) -> None:
    """Three lines and the neutral are four poles; a switch whose poles are not given opens all."""
    changes = {"generators.set.neutral_earthed": earthed, "boards.safe.circuit.1": {**SWITCH, **switch}}
    (island,) = islands(system({**SWITCHED, **changes}))
    assert (island.linked, island.separated) == (linked, separated)


@pytest.mark.parametrize(
    ("of_switch", "of_source", "poles", "linked", "separated"),
    [
        (True, True, 4, True, True),
        (True, False, 4, True, True),  # the link in either of them is one
        (False, True, 4, True, True),
        (False, False, 4, False, True),
        (False, True, 3, True, False),
        (False, True, None, True, True),
    ],
)
def test_where_the_neutral_is_earthed_behind_a_switch_that_separates(
    of_switch: bool, of_source: bool, poles: int | None, linked: bool, separated: bool
) -> None:
    switch = {"kind": "network_separation", "neutral_earth_link": of_switch, **({"poles": poles} if poles else {})}
    made = system({
        "boards": {"main": {}, "safe": {"fed_from": "main", "circuit": [switch]}},
        "inverters.roof": {**UNIT, "connected_to": "safe"},
        "types.inverters.t.backup": {"power": "5 kVA", "neutral_earth_link": of_source},
    })  # fmt: skip
    (island,) = islands(made)
    assert ([each.key for each in island.sources], island.linked, island.separated) == (
        ["inverters.roof"], linked, separated,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("changes", "code", "at", "part"),
    [
        ({**BACKED, "boards": {"main": {}, "safe": {**SAFE, "fed_from_backup": "rof"}}}, "SP51",
         "boards.safe.fed_from_backup", "`rof`"),
        ({**UNIT_AT_MAIN, "boards": {"main": {}, "safe": SAFE}}, "SP53", "boards.safe.fed_from_backup", "no backup"),
        ({**BACKED, "boards": {"main": {}, "safe": {**SAFE, "fed_from": "main"}}}, "SP55",
         "boards.safe.fed_from_backup", "from a board and from a backup output"),
        ({**BACKED, "inverters.roof": {**UNIT, "connected_to": "safe"}}, "SP54", "boards.safe.fed_from_backup",
         "connected to it"),
        ({**BACKED, "inverters.roof": {**UNIT, "connected_to": "main", "count": 2}}, "SP55",
         "boards.safe.fed_from_backup", "2 inverters"),
        ({**SWITCHED, "generators": {"set": {**SET, "connected_to": "main"}}}, "SP55", "generators.set.connected_to",
         "second source"),
        ({**SWITCHED, "generators": {"set": SET, "other": {"power": "5 kVA", "connected_to": "main"}}}, "SP55",
         "generators.other", "kept apart"),
        ({**SWITCHED, "generators": {"other": {**SET, "changeover": "x", "connected_to": "main"}}}, "SP51",
         "boards.safe.circuit.1.second_source", "`set`"),
        ({**SWITCHED, "inverters.roof": {**UNIT, "connected_to": "main", "circuit": [SWITCH]}}, "SP55",
         "inverters.roof.circuit.0", "feeds a board"),
    ],
)  # fmt: skip
def test_a_name_that_leads_nowhere_is_told_at_its_place(changes: dict[str, Any], code: str, at: str, part: str) -> None:
    told = [each for each in _told(changes) if each[:2] == (code, at)]
    assert told, _told(changes)
    assert part in told[0][2]


def test_good_ones_are_taken() -> None:
    assert _told(BACKED) == []
    assert _told(SWITCHED) == []
