"""Values outside of the usual range of their key are asked about; at the bound, and where the spec accepts, they pass.

The house and its data are invented. Ranges are common practice, no source, but for those of modules, which
`tests/reference` compares with an open list.
"""

from __future__ import annotations

import ast
import copy
import json
import re
from importlib import resources
from pathlib import Path
from typing import Any

import pytest

from sld import run, spec
from sld.spec import Unusable
from sld.spec.blocks.block import Block, usual_of
from sld.spec.countries import CODES
from sld.spec.language.blocks import fields_by_key, places
from sld.spec.units import Quantity, Unit, Units
from sld.spec.usual import Usual, marks_of
from sld.symbols.stroke import Text

Data = dict[str, Any]

HOUSE: Data = {
    "project": {"title": "House with an invented array"},
    "site": {"temperature_min": "-12 °C", "temperature_max": "34 °C"},
    "supply": {"earthing_system": "TN-S"},
    "types": {
        "modules": {
            "mono": {
                "rated_power": "410 W", "open_circuit_voltage": "39 V", "short_circuit_current": "13.9 A",
                "mpp_voltage": "31.5 V", "mpp_current": "13 A", "voltage_coefficient": "-0.26 %/K",
            }
        },
        "inverters": {
            "ten": {
                "rated_power": "10 kW", "phases": 3, "dc_voltage_max": "1000 V", "mpp_voltage_min": "200 V",
                "mpp_voltage_max": "850 V", "inputs": [{"current_max": "16 A", "short_circuit_current_max": "22 A"}],
            }
        },
    },
    "boards": {"main": {"rated_current": "63 A", "circuit": [{"kind": "breaker"}, {"kind": "fuse"}]}},
    "inverters": {
        "roof": {
            "type": "ten",
            "circuit": [{"kind": "breaker"}, {"kind": "cable", "length": "15 m"}, {"kind": "rcbo"}],
            "inputs": [{"strings": [{"module": "mono", "modules_in_series": 18, "cable": {"length": "20 m"}}]}],
        }
    },
    "batteries": {"store": {}},
}  # fmt: skip
MONO, TEN, ROOF = "types.modules.mono", "types.inverters.ten", "inverters.roof"
LIMITS, BREAKER, CABLE, RCBO = f"{TEN}.inputs[0]", f"{ROOF}.circuit[0]", f"{ROOF}.circuit[1]", f"{ROOF}.circuit[2]"
STRING = f"{ROOF}.inputs[0].strings[0]"
SMALL = {f"{STRING}.modules_in_series": 1}
THIN = {f"{MONO}.open_circuit_voltage": "48 V", f"{MONO}.short_circuit_current": "17 A"}


def changed(changes: Data) -> Data:
    """Return the house with values set by the path that an acceptance writes."""
    data = copy.deepcopy(HOUSE)
    for path, value in changes.items():
        *way, last = [int(step) if step.isdigit() else step for step in re.findall(r"[^.\[\]]+", path)]
        here: Any = data
        for step in way:
            here = here[step]
        here[last] = value
    return data


def with_isolator(own: str, of_type: str = "32 A", volt: str = "1000 V") -> Data:
    """Return the house with a DC isolator whose rated current stands at it, or else in its type."""
    given = {"kind": "isolator", "type": "switch", "rated_voltage": volt, **({"rated_current": own} if own else {})}
    return {
        "types.dc_devices": {"switch": {"kind": "isolator", "rated_current": of_type}},
        f"{ROOF}.inputs[0].circuit": [given],
    }


def refusals(changes: Data) -> list[Any]:
    """Return the findings that make the changed house unusable."""
    try:
        spec.load_mapping(changed(changes))
    except Unusable as error:
        return list(error.findings)
    return []


FACTS = [
    # key, usual at the bound, beyond it, what is asked
    (f"{MONO}.voltage_coefficient", "-0.15 %/K", "-0.149 %/K", "is the unit right?"),
    (f"{MONO}.voltage_coefficient", "-0.6 %/K", "-0.601 %/K", "is the unit right?"),
    (f"{MONO}.voltage_coefficient", "-0.234 V/K", "-0.26 V/K", "is it meant in %/K?"),  # 0.6 % of 39 V; -0.67 %/K
    (f"{MONO}.voltage_coefficient", "-58.5 mV/K", "-58 mV/K", ""),  # 0.15 % of 39 V
    (f"{MONO}.voltage_coefficient", "-0.26 %/K", "-0.13 %/K", "is the unit right?"),  # meant was -0.13 V/K
    (f"{MONO}.voltage_coefficient", "-0.26 %/K", "-0.0026 %/K", "is it a share and not a percentage?"),
    (f"{MONO}.power_coefficient", "-0.15 %/K", "-0.1 %/K", ""),
    (f"{MONO}.mpp_voltage_coefficient", "-0.7 %/K", "-0.71 %/K", ""),
    (f"{MONO}.current_coefficient", "20.85 mA/K", "21 mA/K", ""),  # 0.15 % of 13.9 A
    (f"{MONO}.current_coefficient", "0.05 %/K", "-0.05 %/K", "is the sign right?"),
    (f"{MONO}.current_coefficient", "-0.02 %/K", "-0.021 %/K", "is the sign right?"),
    (f"{MONO}.current_coefficient", "0.05 %/K", "0.5 %/K", "is the unit right?"),
    (f"{MONO}.series_fuse_max", "3 A", "2.5 A", "decimal point"),
    (f"{MONO}.series_fuse_max", "60 A", "250 A", "decimal point"),
    (f"{MONO}.system_voltage_max", "2 kV", "10 kV", "decimal point"),
    (f"{TEN}.rated_power", "8 kW", "10 W", "is the unit missing, or is it meant in kW?"),
    (f"{TEN}.rated_power", "10 MW", "11 MW", "meant in mW?"),
    (f"{TEN}.dc_voltage_max", "2 kV", "6 kV", "decimal point"),
    (f"{TEN}.dc_voltage_max", "2000 V", "600 kV", "meant in mV?"),
    (f"{LIMITS}.current_max", "22 A", "12 kA", ""),
    (f"{LIMITS}.short_circuit_current_max", "80 A", "20 kA", ""),
    (f"{ROOF}.inputs[0].strings[0].cable.length", "0.3 m", "0.29 m", ""),
    (f"{CABLE}.length", "0.1 m", "0 m", "another key"),
    ("batteries.store.energy", "300 Wh", "10 Wh", "is the unit missing, or is it meant in kWh?"),
    ("supply.frequency", "60 Hz", "55 Hz", ""),
    ("supply.frequency", "50 Hz", "500 Hz", "decimal point"),
    ("supply.frequency", "50 Hz", "16.7 Hz", ""),
    ("site.temperature_min", "10 °C", "10.5 °C", "is the sign right?"),
    ("site.temperature_min", "-60 °C", "-61 °C", ""),
    ("site.temperature_max", "15 °C", "14 °C", ""),
    (f"{TEN}.dc_residual_current", "1 A", "6 A", "decimal point"),
    (f"{BREAKER}.breaking_capacity", "1 kA", "0.006 kA", "decimal point"),
    (f"{BREAKER}.breaking_capacity", "6 kA", "6000 kA", "meant in A?"),
    ("boards.main.circuit[1].breaking_capacity", "300 kA", "500 kA", "decimal point"),
    ("boards.main.rated_current", "10 kA", "63 kA", ""),
    ("boards.main.peak_current", "17 kA", "17000 kA", "meant in A?"),
    ("boards.main.conditional_current", "16 kA", "16000 kA", "meant in A?"),
]
"""Ranges of one key, ends included."""

CROSSED: list[tuple[str, Data, Data, str]] = [
    # where it is told, changes that are usual, others beyond, what is told
    (f"{MONO}.open_circuit_voltage", THIN, {**THIN, f"{MONO}.short_circuit_current": "17.1 A"}, "fill factor"),
    (f"{LIMITS}.short_circuit_current_max", {f"{LIMITS}.short_circuit_current_max": "80 A"},
     {f"{LIMITS}.short_circuit_current_max": "81 A"}, "5.06; usual is 1 to 5"),
    (f"{LIMITS}.short_circuit_current_max", {f"{LIMITS}.short_circuit_current_max": "16 A"},
     {f"{LIMITS}.short_circuit_current_max": "2.2 A"}, "0.138; usual is 1 to 5"),
    (f"{TEN}.backup.power", {f"{TEN}.backup": {"power": "20 kVA"}}, {f"{TEN}.backup": {"power": "21 kVA"}},
     "backup output over that of the inverter: 2.1"),
    # 10 kVA / (√3 · 400 V) = 14.4 A; 5 times 72.2 A; of a generator of 10 kVA 12 times 173 A
    (f"{TEN}.backup.short_circuit_current", {f"{TEN}.backup": {"power": "10 kVA", "short_circuit_current": "72 A"}},
     {f"{TEN}.backup": {"power": "10 kVA", "short_circuit_current": "73 A"}}, "over rated current"),
    ("generators.set.short_circuit_current",
     {"generators": {"set": {"power": "10 kVA", "changeover": "x", "short_circuit_current": "173 A"}}},
     {"generators": {"set": {"power": "10 kVA", "changeover": "x", "short_circuit_current": "174 A"}}},
     "over rated current"),
    ("batteries.store.voltage_max", {"batteries.store": {"voltage_min": "29 V", "voltage_max": "58 V"}},
     {"batteries.store": {"voltage_min": "28 V", "voltage_max": "58 V"}}, "highest over lowest"),
    (f"{TEN}.dc_voltage_max", {f"{TEN}.mpp_voltage_max": "334 V"}, {f"{TEN}.mpp_voltage_max": "330 V"},
     "3.03; usual is at most 3"),
    (f"{ROOF}.inputs", {f"{STRING}.count": 6}, {f"{STRING}.count": 7},  # 18 · 6 · 410 W = 44.3 kW; 51.7 kW
     "array power over inverter power: 5.17; usual is at most 5"),
    (f"{TEN}.rated_voltage", {f"{TEN}.rated_voltage": "415 V"}, {f"{TEN}.rated_voltage": "690 V"},
     "690 V on a supply of 400 V"),
    (f"{TEN}.rated_voltage", {f"{TEN}.phases": 1, f"{TEN}.rated_voltage": "230 V"},
     {f"{TEN}.phases": 1, f"{TEN}.rated_voltage": "120 V"}, "120 V on a supply of 400 V"),
    (f"{TEN}.rated_voltage", {f"{TEN}.rated_voltage": "480 V", "supply.voltage": "480 V"},
     {f"{TEN}.rated_voltage": "230 V"}, "230 V on a supply of 400 V"),
    (f"{ROOF}.inputs[0].circuit[0].rated_voltage", with_isolator("32 A", volt="1 kV"),
     with_isolator("32 A", volt="10 kV"), "is 10 kV; usual is 20 V to 2 kV"),
    # modules of 13.9 A: 5 times 13.9 A is 69.5 A; up to 63 A whatever they give
    (f"{ROOF}.inputs[0].circuit[0].rated_current", with_isolator("69 A"), with_isolator("320 A"),
     "23; usual is at most 5"),
    (f"{ROOF}.inputs[0].circuit[0].rated_current",
     {**with_isolator("63 A"), f"{MONO}.short_circuit_current": "5.2 A", f"{MONO}.mpp_current": "5 A",
      f"{MONO}.rated_power": "157.5 W"}, with_isolator("70 A"), "5.04; usual is at most 5"),
    (f"{ROOF}.inputs[0].circuit[0].rated_current", {**with_isolator("208 A"), f"{STRING}.count": 3},
     {**with_isolator("209 A"), f"{STRING}.count": 3}, "5.01; usual is at most 5"),
    ("types.dc_devices.switch.rated_current", with_isolator("", "63 A"), with_isolator("", "320 A"), "at most 5"),
    # without a neutral there is but the voltage between lines
    (f"{TEN}.rated_voltage", {f"{TEN}.phases": 1, f"{TEN}.rated_voltage": "230 V"},
     {f"{TEN}.phases": 1, f"{TEN}.rated_voltage": "230 V",
      "supply": {"earthing_system": "IT", "voltage": "400 V", "neutral": "not_distributed"}},
     "230 V on a supply of 400 V"),
    (f"{TEN}.current_max", {f"{TEN}.current_max": "14.5 A"}, {f"{TEN}.current_max": "1.45 A"},  # 10 kW / √3 / 400 V
     "0.1; usual is 0.7 to 3"),
    (f"{TEN}.current_max", {f"{TEN}.current_max": "16 A"}, {f"{TEN}.current_max": "145 A"}, "10; usual is 0.7 to 3"),
    # 5 kW between two lines of 208 V: 24 A; to neutral it would be 41.7 A
    (f"{TEN}.current_max",
     {"profile": "NEC 690", f"{TEN}.phases": 1, f"{TEN}.rated_power": "5 kW", f"{TEN}.current_max": "24 A"},
     {"profile": "NEC 690", f"{TEN}.phases": 1, f"{TEN}.rated_power": "5 kW", f"{TEN}.current_max": "2.4 A"},
     "usual is 0.7 to 3"),
    (f"{BREAKER}.breaking_capacity", {f"{BREAKER}.breaking_capacity": "50 kA"},
     {f"{BREAKER}.breaking_capacity": "60 kA"}, "60 kA; usual is at most 50 kA"),
    (f"{RCBO}.breaking_capacity", {f"{RCBO}.breaking_capacity": "50 kA"}, {f"{RCBO}.breaking_capacity": "100 kA"},
     "100 kA; usual is at most 50 kA"),
    ("boards.main.short_time_current", {"boards.main.short_time_current": "25 kA"},
     {"boards.main.short_time_current": "100 kA"}, "100 kA; usual is at most 25 kA"),
    ("boards.main.short_time_current",
     {"boards.main.short_time_current": "50 kA", "boards.main.rated_current": "250 A"},
     {"boards.main.short_time_current": "51 kA", "boards.main.rated_current": "250 A"}, "usual is at most 50 kA"),
    # EN 50160: 50 Hz; North America 60 Hz (IEC 60038 Table 1); Japan has both
    ("supply.frequency", {"supply.country": "DE", "supply.frequency": "50 Hz"},
     {"supply.country": "DE", "supply.frequency": "60 Hz"}, "60 Hz; usual values: 50 Hz"),
    ("supply.frequency", {"supply.country": "US", "supply.frequency": "60 Hz"},
     {"supply.country": "US", "supply.frequency": "50 Hz"}, "50 Hz; usual values: 60 Hz"),
    ("supply.frequency", {"supply.country": "JP", "supply.grid_rules": "generic", "supply.frequency": "60 Hz"},
     {"supply.country": "NO", "supply.grid_rules": "generic", "supply.frequency": "60 Hz"}, "the country or the"),
    ("supply.frequency", {"supply.frequency": "60 Hz"}, {"supply.country": "DE", "supply.frequency": "55 Hz"},
     "50 Hz and 60 Hz"),
    # 400 V / √3 / 6 kA = 38.5 mΩ; half of it is 19.2 mΩ
    ("supply.loop_impedance", {"supply.prospective_fault_current": "6 kA", "supply.loop_impedance": "0.0193 ohm"},
     {"supply.prospective_fault_current": "6 kA", "supply.loop_impedance": "0.0192 ohm"}, "usual is at least 0.5"),
    ("boards.main.rated_current", {"supply.service_fuse": "63 A", "boards.main.rated_current": "598 A"},
     {"supply.service_fuse": "63 A", "boards.main.rated_current": "630 A"}, "10; usual is at most 9.5"),
    ("boards.main.rated_current",
     {"boards.main.circuit[0].rated_current": "40 A", "boards.main.rated_current": "380 A"},
     {"boards.main.circuit[0].rated_current": "40 A", "boards.main.rated_current": "400 A"},
     "10; usual is at most 9.5"),
]  # fmt: skip
"""Values that belong together."""


IMPOSSIBLE = [
    # key, possible, what no module has, what is told; Umpp times Impp is 31.5 V · 13 A = 409.5 W
    (f"{MONO}.mpp_current", "13.8 A", "13.9 A", "not below the short-circuit current"),
    (f"{MONO}.mpp_voltage", "31.6 V", "39 V", "not below the open-circuit voltage"),
    (f"{MONO}.rated_power", "373 W", "372 W", "is not MPP voltage times current"),
    (f"{MONO}.rated_power", "455 W", "456 W", "is not MPP voltage times current"),
    (f"{MONO}.voltage_coefficient", "-0.3 %/K", "0.3 %/K", "must be at most 0 %/K"),
]
"""Values that contradict each other are no question."""


def acceptance(at: str) -> Data:
    return {"code": "SP41", "at": at, "reason": "As its data sheet has it.", "role": "designer", "date": "2026-03-02"}


def test_the_house_is_usual() -> None:
    assert refusals({}) == []


@pytest.mark.parametrize(("at", "usual", "beyond", "asked"), FACTS, ids=[f"{fact[0]} {fact[2]}" for fact in FACTS])
def test_a_value_beyond_its_range_is_asked_about(at: str, usual: str, beyond: str, asked: str) -> None:
    more = {f"{TEN}.mpp_voltage_max": "850 V"} if "dc_voltage" in at else {}
    assert refusals({at: usual, **more}) == []
    told = refusals({at: beyond, **more})
    assert (told[0].code, "".join(f"[{s}]" if isinstance(s, int) else f".{s}" for s in told[0].at)[1:]) == ("SP41", at)
    assert str(told[0].message).endswith("?")
    assert asked in str(told[0].message)


@pytest.mark.parametrize(
    ("at", "usual", "beyond", "message"), CROSSED, ids=[f"{case[0]} {case[3]}" for case in CROSSED]
)
def test_values_that_do_not_go_together_are_asked_about(at: str, usual: Data, beyond: Data, message: str) -> None:
    assert refusals(usual) == []
    (told,) = refusals(beyond)
    assert (told.code, "".join(f"[{s}]" if isinstance(s, int) else f".{s}" for s in told.at)[1:]) == ("SP41", at)
    assert message in str(told.message)


@pytest.mark.parametrize(("at", "possible", "impossible", "message"), IMPOSSIBLE)
def test_what_is_impossible_is_refused_even_where_it_is_accepted(
    at: str, possible: str, impossible: str, message: str
) -> None:
    assert refusals({at: possible}) == []
    (told,) = refusals({at: impossible, "accept": [acceptance(at)]})
    assert told.code in ("SP36", "SP38")
    assert message in told.message


@pytest.mark.parametrize(
    ("at", "beyond"),
    [*((fact[0], {fact[0]: fact[2]}) for fact in FACTS), *((case[0], case[2]) for case in CROSSED)],
)
def test_what_is_accepted_at_its_very_place_is_taken(at: str, beyond: Data) -> None:
    others = [f"{LIMITS}.short_circuit_current_max", f"{TEN}.dc_voltage_max", f"{ROOF}.inputs", at]
    assert refusals({**beyond, "accept": [acceptance(each) for each in others]}) == []
    around = [acceptance(each.rpartition(".")[0]) for each in others]
    assert refusals({**beyond, "accept": around}), "a block around the key accepts nothing"


@pytest.mark.parametrize(
    ("code", "remedy"),
    [("UK", "write GB"), ("EL", "write GR"), ("QQ", "generic"), ("ZZ", "ISO 3166-1"), ("EU", "ISO 3166-1")],
)
def test_a_code_that_no_country_has_is_refused(code: str, remedy: str) -> None:
    (told,) = refusals({"supply.country": code})
    assert f"`{code}`" in told.message
    assert remedy in told.remedy


@pytest.mark.parametrize("code", ["GB", "IE", "DE", "AT", "CH", "US", "AU", "NZ"])
def test_countries_are_taken(code: str) -> None:
    assert refusals({"supply.country": code}) == []


@pytest.mark.parametrize("code", ["GR", "TW", "SE"])
def test_a_country_without_grid_rules_is_taken_with_the_generic_ones(code: str) -> None:
    (told,) = refusals({"supply.country": code})
    assert f"no grid rules for `{code}`" in told.message
    assert "`grid_rules: generic`" in told.remedy
    assert "AT, AU, BE, CH, DE, ES, FR, GB, IE, IT, NL, NZ, PL, US, ZA" in told.remedy
    assert refusals({"supply.country": code, "supply.grid_rules": "generic"}) == []


def test_the_list_of_countries_is_that_of_the_time_zone_database() -> None:
    pytest.importorskip("tzdata")
    text = resources.files("tzdata").joinpath("zoneinfo", "iso3166.tab").read_text(encoding="utf-8")
    listed = {line.split("\t")[0] for line in text.splitlines() if line and not line.startswith("#")}
    assert listed == CODES
    assert len(listed) == 249  # ISO 3166-1: 249 officially assigned codes (from memory)


QUANTITIES = [
    (block, key)
    for block in places()
    for key, field in fields_by_key(block).items()
    if any(isinstance(mark, Unit | Units) for mark in marks_of(field))
]


@pytest.mark.parametrize(("block", "key"), QUANTITIES, ids=[f"{block.__name__}.{key}" for block, key in QUANTITIES])
def test_each_quantity_has_a_likely_example(block: type[Block], key: str) -> None:
    """The example is read, is usual, and has the sign of the range; each end of the range is read too."""
    field = fields_by_key(block)[key]
    mark = next(mark for mark in marks_of(field) if isinstance(mark, Unit | Units))
    _, usual, unit = usual_of(block)[key]

    def value(text: str) -> float:
        found = mark.read(text)
        return found.value if isinstance(found, Quantity) else found

    assert usual.holds(value(usual.example), unit)
    ends = [value(each) for each in (usual.low, usual.high, *usual.among) if each]
    assert ends == sorted(ends)
    if "coefficient" in key and key != "current_coefficient":
        assert value(usual.example) < 0


@pytest.mark.parametrize(
    ("usual", "words"),
    [
        (Usual("12 kW", "100 W", "10 MW"), "100 W to 10 MW"),
        (Usual("5 m", high="1 km"), "at most 1 km"),
        (Usual("5 m", low="0.3 m"), "at least 0.3 m"),
        (Usual("50 Hz", among=("50 Hz", "60 Hz")), "50 Hz or 60 Hz"),
        (Usual("5 m"), ""),
    ],
)
def test_a_range_in_words(usual: Usual, words: str) -> None:
    assert str(usual) == words
    assert usual.bounded == bool(words)


QUANTITY = re.compile(
    r"[0-9] ?(?:m?V|k?A|mA|k?W|k?VA|[km]?m2?|mm2|°C|ohm|kohm|%|%/K|V/K|Hz|Wh|kWh|AWG|kcmil|Nm)(?![A-Za-z0-9])"
)
WRONG = [None, True, "much", "1,5 m", "1,500 V", "1 500 V", "012 V", "5 furlong", "5 kv", "-99999 V", "104 °F", 1e300,
         -4, "nan", "3 kA", "25", [], {}, "11 AWG", "250 AWG", "0 %/K", "900 %/K", ".5 m", "8 mm2"]  # fmt: skip


@pytest.mark.parametrize(("block", "key"), QUANTITIES, ids=[f"{block.__name__}.{key}" for block, key in QUANTITIES])
def test_no_remedy_holds_a_quantity(block: type[Block], key: str) -> None:
    """What is pasted from a remedy must never be a number that nobody gave."""
    field = fields_by_key(block)[key]
    mark = next(mark for mark in marks_of(field) if isinstance(mark, Unit | Units))
    remedies = []
    for value in WRONG:
        try:
            mark.read(value)
        except ValueError as error:
            context = getattr(error, "context", {})
            remedies.append(str(context.get("remedy", "")))
    assert remedies
    assert [each for each in remedies if QUANTITY.search(each)] == []


@pytest.mark.parametrize(
    "path",
    [
        "site.temperature_min", "site.temperature_max", f"{MONO}.rated_power", f"{MONO}.open_circuit_voltage",
        f"{MONO}.mpp_current", f"{TEN}.rated_power", f"{TEN}.dc_voltage_max", f"{TEN}.mpp_voltage_min",
        f"{LIMITS}.current_max", f"{LIMITS}.short_circuit_current_max", f"{CABLE}.length", f"{TEN}.phases",
        f"{STRING}.modules_in_series", "supply.earthing_system",
    ],
)  # fmt: skip
def test_a_missing_key_is_named_and_not_filled_in(path: str) -> None:
    data = changed({})
    *way, last = [int(step) if step.isdigit() else step for step in re.findall(r"[^.\[\]]+", path)]
    here: Any = data
    for step in way:
        here = here[step]
    del here[last]
    with pytest.raises(Unusable) as caught:
        spec.load_mapping(data)
    (told,) = caught.value.findings
    assert (told.code, f"add `{last}:`" in told.remedy) == ("SP31", True)
    assert not QUANTITY.search(told.remedy)


@pytest.mark.parametrize("at", [fact[0] for fact in FACTS])
def test_a_refused_value_is_not_replaced_by_another(at: str) -> None:
    beyond = next(fact[2] for fact in FACTS if fact[0] == at)
    assert not any(QUANTITY.search(str(each.remedy)) for each in refusals({at: beyond}))


def test_a_bound_in_another_unit_is_the_same_bound() -> None:
    usual = Usual("12 kW", "100 W", "10 MW")
    assert [usual.holds(value_w, "W") for value_w in (99.99, 100, 1e7, 1.0001e7)] == [False, True, True, False]


def test_what_is_accepted_is_printed_with_its_reason(tmp_path: Path) -> None:
    path = tmp_path / "house.json"
    changes = {f"{MONO}.voltage_coefficient": "-0.12 %/K", "accept": [acceptance(f"{MONO}.voltage_coefficient")]}
    path.write_text(json.dumps(changed(changes)), encoding="utf-8")
    found = run.check(path)
    (unusual,) = [each for each in found.findings if each.code == "SP41"]
    assert unusual.accepted is not None
    assert "ACC01" not in [each.code for each in found.findings]
    sheets = run.draw(found).sheets
    texts = [
        each.text for sheet in sheets for group in sheet.groups for each in group.strokes if isinstance(each, Text)
    ]
    words = " ".join(" ".join(texts).split())
    assert "voltage coefficient is -0.12 %/K; usual is -0.6 %/K to -0.15 %/K" in words.replace("\u00a0", " ")
    assert "As its data sheet has it." in words


BLOCKS = list(places())


@pytest.mark.parametrize("block", BLOCKS, ids=lambda block: block.__name__)
def test_what_is_said_of_a_missing_key_holds_no_quantity(block: type[Block]) -> None:
    """The remedy for a missing key is its meaning, and that is its description."""
    needed = {key: field for key, field in fields_by_key(block).items() if field.is_required()}
    assert [key for key, field in needed.items() if QUANTITY.search(field.description or "")] == []


def literal_words(node: ast.AST) -> str:
    """Return the fixed words of an expression, what is put into a text as an ellipsis."""
    if isinstance(node, ast.JoinedStr):
        return "".join(literal_words(part) for part in node.values)
    if isinstance(node, ast.Constant):
        return str(node.value)
    return "…" if isinstance(node, ast.FormattedValue) else " ".join(map(literal_words, ast.iter_child_nodes(node)))


def test_no_remedy_of_a_refusal_in_the_source_holds_a_quantity() -> None:
    """Every function of the reader that tells a mistake takes message and remedy; the remedy is looked at."""
    at = {"fault": 1, "Explanation": 2, "UnusableText": 2, "told": 3, "_not_a_number": 1, "_wrong_unit": 3}
    remedies = []
    for file in sorted(Path(spec.__file__).parent.rglob("*.py")):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in at:
                remedies += [literal_words(each) for each in node.args[at[node.func.id] :][:1]]
            elif isinstance(node, ast.Assign) and "remedy" in ast.unparse(node.targets[0]):
                remedies.append(literal_words(node.value))
    assert len(remedies) > 80
    assert [each for each in remedies if QUANTITY.search(each) or re.search(r"… ?(V|A|W|m|°C|%)\b", each)] == []
