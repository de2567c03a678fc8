"""Whole systems under the profiles that differ: one array under each, supplies of North America, sizes in AWG."""

from __future__ import annotations

import json
import re
from math import hypot
from pathlib import Path
from typing import Any

import pytest

from sld import run
from sld.layout.diagram.labels import below, conductors
from sld.model.build import build
from sld.model.device import Cable, InverterUnit, Network
from sld.model.system import System
from sld.ratings.symbol import Symbol, Word
from sld.rules import review
from sld.spec.document import Spec
from sld.spec.references import dangling
from sld.steps import Ratings, rate
from sld.tables.profiles import PROFILE_NAMES
from sld.wire_size import name_of

SPECS = Path(__file__).resolve().parents[2] / "specs"
DESIGNS = Path(__file__).resolve().parents[1] / "designs" / "ordinary"
FOREIGN = re.compile(r"IEC 6(0364|2548|0898|0947|0909|0228|0269|1439|1643)|BS 7671|UTE|AS/NZS|EN 5(0549|0618)|EN 62305")

MODULE = {
    "rated_power": "600 W",
    "open_circuit_voltage": "41 V",
    "short_circuit_current": "18.5 A",
    "mpp_voltage": "34.5 V",
    "mpp_current": "17.4 A",
    "voltage_coefficient": "-0.25 %/K",
    "current_coefficient": "0.05 %/K",
    "power_coefficient": "-0.3 %/K",
    "series_fuse_max": "35 A",
}
INVERTER = {
    "rated_power": "20 kW",
    "phases": 3,
    "dc_voltage_max": "1000 V",
    "mpp_voltage_min": "200 V",
    "mpp_voltage_max": "850 V",
    "inputs": [{"current_max": "60 A", "short_circuit_current_max": "90 A"}],
}
LINE_TO_LINE = {**INVERTER, "rated_power": "7.6 kW", "phases": 1}


def _spec(profile: str, supply: dict[str, Any], unit: dict[str, Any], type_: dict[str, Any] = INVERTER) -> Spec:
    string = {"module": "m", "modules_in_series": 14, "count": 3}
    data = {
        "project": {"title": "one array"},
        "profile": profile,
        "site": {"temperature_min": "-10 °C", "temperature_max": "35 °C"},
        "supply": {"earthing_system": "TN-C-S", "service_fuse": "100 A", **supply},
        "types": {"modules": {"m": MODULE}, "inverters": {"t": type_}},
        "inverters": {"roof": {"type": "t", "inputs": [{"strings": [string], "string_fuses": {}}], **unit}},
    }
    spec = Spec.model_validate_json(json.dumps(data))
    assert not dangling(spec)
    return spec


def _rated(profile: str, supply: dict[str, Any], **unit: Any) -> tuple[System, Ratings]:
    type_ = LINE_TO_LINE if unit.pop("single", False) else INVERTER
    system = build(_spec(profile, supply, unit, type_))
    return system, rate(system)


INPUT = "inverters.roof.inputs.0"
UNIT = "inverters.roof"


@pytest.mark.parametrize(
    ("profile", "needed", "test_a", "limit_a", "fuse_a"),
    [
        # (3 - 1) · 18.5 = 37 A > 35 A; 1.5 · 18.5 = 27.75 A
        ("IEC 62548-1", "needed", 37.0, 35.0, 30),
        ("cautious", "needed", 37.0, 35.0, 30),
        ("BS 7671", "needed", 37.0, 35.0, 30),
        ("AS/NZS 5033", "needed", 37.0, 35.0, 30),
        # 2 · 1.25 · 18.5 = 46.25 A < 1.35 · 35 = 47.25 A; 1.1 · 1.25 · 18.5 = 25.4 A
        ("IEC 60364-7-712", "not needed", 46.25, 47.25, 30),
        # 2 · 1.25 · 18.5 = 46.25 A > 35 A; 1.5625 · 18.5 = 28.9 A
        ("NEC 690", "needed", 46.25, 35.0, 30),
    ],
)
def test_one_array_under_every_profile(profile: str, needed: str, test_a: float, limit_a: float, fuse_a: float) -> None:
    """The array of the facts: Isc 18.5 A, largest series fuse 35 A, three strings in parallel; worked by hand.

    IEC 62548:2016 6.5 as restated by solarsaarthi.com, 712.431 by elektroteka, NEC 690.9(A)(1) by iaeimagazine.org.
    """
    system, ratings = _rated(profile, {})
    assert str(ratings.told(INPUT, Word.STRING_FUSES)) == needed
    test, limit, fuse = (
        ratings.get(INPUT, symbol) for symbol in (Symbol.IREV_TEST, Symbol.IREV_LIMIT, Symbol.IN_STRING)
    )
    assert test is not None
    assert limit is not None
    assert fuse is not None
    assert (test.value, limit.value) == pytest.approx((test_a, limit_a))
    assert fuse.value == fuse_a
    asked = {finding.code for finding in review(system, ratings)}
    assert ("DC13" in asked) is (needed == "not needed")


def test_two_profiles_disagree_on_one_array() -> None:
    words = {name: str(_rated(name, {})[1].told(INPUT, Word.STRING_FUSES)) for name in PROFILE_NAMES}
    assert words["IEC 62548-1"] != words["IEC 60364-7-712"]
    assert words["NEC 690"] == "needed"


def test_the_profile_is_printed(tmp_path: Path) -> None:
    for profile in ("NEC 690", "AS/NZS 5033"):
        path = tmp_path / "spec.yaml"
        path.write_text(_spec(profile, {}, {}).model_dump_json(by_alias=True, exclude_unset=True), encoding="utf-8")
        sheets = run.draw(run.check(path)).sheets
        files = [content.decode() for content in run.files(sheets, "s", ("svg",)).values()]
        assert any(f"Rule profile: {profile}." in text for text in files)
        assert f">{profile}</text>" in files[0], "in the title block"


@pytest.mark.parametrize(
    ("supply", "unit", "ib_a", "label"),
    [
        # 7600 W / 240 V
        ({"phases": 1, "split_phase": True}, {"single": True}, 31.67, "120/240 V"),
        # 7600 W / 208 V between two lines, 7600 W / 120 V to neutral
        ({"voltage": "208 V"}, {"single": True, "line": "L1-L2"}, 36.54, "208Y/120 V"),
        ({"voltage": "208 V"}, {"single": True, "line": "L1"}, 63.33, "208Y/120 V"),
        # 20 kW / (√3 · 480 V)
        ({"voltage": "480 V"}, {}, 24.06, "480Y/277 V"),
        ({}, {}, 55.51, "208Y/120 V"),
    ],
)
def test_currents_on_supplies_of_north_america(
    supply: dict[str, Any], unit: dict[str, Any], ib_a: float, label: str
) -> None:
    """S / U with the voltage the inverter works at; IEC 60038:2009 Table 1 and ANSI C84.1 for the names."""
    system, ratings = _rated("NEC 690", supply, **unit)
    design = ratings.get(UNIT, Symbol.IB)
    assert design is not None
    assert design.value == pytest.approx(ib_a, abs=0.01)
    assert system.supply.frequency_hz == 60
    (network,) = system.of(Network)
    assert label in [str(line.said) for line in below(network, system, ratings)]


@pytest.mark.parametrize(
    ("supply", "unit", "base_v", "times"),
    [
        ({"phases": 1, "split_phase": True}, {"single": True}, 240, 2),
        ({"voltage": "208 V"}, {"single": True, "line": "L1-L2"}, 208, 2),
        ({"voltage": "208 V"}, {"single": True, "line": "L2"}, 120, 2),
        ({"voltage": "480 V"}, {}, 480, 3**0.5),
    ],
)
def test_rise_is_of_the_voltage_that_the_inverter_sees(
    supply: dict[str, Any], unit: dict[str, Any], base_v: float, times: float
) -> None:
    """Ohm's law with Chapter 9 Table 8: 4 AWG copper 0.308 Ω/kft, 30 m one way."""
    circuit = [{"kind": "breaker"}, {"kind": "cable", "length": "30 m", "section": "4 AWG"}, {"kind": "isolator"}]
    _, ratings = _rated("NEC 690", supply, circuit=circuit, **unit)
    design, rise = ratings.get(UNIT, Symbol.IB), ratings.get(UNIT, Symbol.DU_AC)
    assert design is not None
    assert rise is not None
    expected = 100 * times * design.value * 30 * (0.308 / 304.8) / base_v
    assert rise.value == pytest.approx(expected, rel=1e-6)


def test_three_line_to_line_inverters_share_the_lines_of_a_feeder() -> None:
    """Balanced between lines: √3 of one current in each line, nothing in the neutral (circuit theory)."""
    data = json.loads(
        _spec("NEC 690", {"voltage": "208 V"}, {}, LINE_TO_LINE).model_dump_json(by_alias=True, exclude_unset=True)
    )
    one = data["inverters"].pop("roof")
    for name, line in (("a", "L1-L2"), ("b", "L2-L3"), ("c", "L3-L1")):
        data["inverters"][name] = {**one, "line": line, "connected_to": "pv"}
    data["boards"] = {
        "main": {},
        "pv": {"fed_from": "main", "circuit": [{"kind": "breaker"}, {"kind": "cable", "length": 9}]},
    }
    system = build(Spec.model_validate_json(json.dumps(data)))
    ratings = rate(system)
    feeder = "boards.pv.circuit.1"
    export, neutral = ratings.get(feeder, Symbol.IEXPORT), ratings.get(feeder, Symbol.I_NEUTRAL)
    assert export is not None
    assert neutral is not None
    assert export.value == pytest.approx(3**0.5 * 7600 / 208)
    assert neutral.value == pytest.approx(0, abs=1e-9)
    device = ratings.get("boards.pv.circuit.0", Symbol.IN)
    assert device is not None
    assert device.value == 80  # 1.25 · 63.3 A = 79.1 A


def _nec_specs() -> list[Path]:
    return [path for path in sorted(SPECS.glob("*.yaml")) if "profile: NEC 690" in path.read_text(encoding="utf-8")]


@pytest.mark.parametrize("path", _nec_specs(), ids=lambda path: path.stem)
def test_no_clause_of_another_code_is_cited(path: Path) -> None:
    checked = run.check(path)
    cited = {f"{rating.symbol}: {rating.clause}" for _, rating in checked.ratings if FOREIGN.search(str(rating.clause))}
    told = {
        str(finding.message)
        for finding in checked.findings
        if FOREIGN.search(str(finding.message) + str(finding.remedy))
    }
    assert not cited
    assert not told


@pytest.mark.parametrize("path", _nec_specs(), ids=lambda path: path.stem)
def test_sizes_are_printed_as_awg_everywhere(path: Path) -> None:
    checked = run.check(path)
    files = run.files(run.draw(checked).sheets, "s", ("svg",))
    text = "".join(content.decode() for content in files.values())
    assert "AWG" in text
    assert "mm²" not in text
    for cable in checked.system.of(Cable):
        assert re.search(r"AWG|kcmil", str(conductors(cable, checked.system, checked.ratings)))


def test_cedar_house_draws_cleanly_and_its_numbers_are_those_of_the_code() -> None:
    """By hand: 1.25 · 32 A = 40 A; 8 AWG of 75 °C 50 A; (200 + 40) / 1.2 = 200 A; 250.122 for 40 A: 10 AWG;
    1.5625 · 13.9 A = 21.7 A, 12 AWG of 90 °C at 55 °C with four conductors 30 · 0.76 · 0.8 = 18.2 A >= 17.4 A."""
    checked = run.check(SPECS / "cedar-house.yaml")
    assert [finding.code for finding in checked.findings if finding.severity > 1] == []
    get = checked.ratings.get
    device, cable = get("inverters.garage.circuit.0", Symbol.IN), get("inverters.garage.circuit.1", Symbol.S)
    grounding, bus = get("inverters.garage.circuit.1", Symbol.SPE), get("boards.main", Symbol.INA_LEAST)
    string = get("inverters.garage.inputs.0.strings.0.cable", Symbol.IZ)
    assert device is not None
    assert cable is not None
    assert grounding is not None
    assert bus is not None
    assert string is not None
    assert device.value == 40
    assert name_of(cable.value) == "8 AWG"
    assert name_of(grounding.value) == "10 AWG"
    assert bus.value == pytest.approx(200)
    assert string.value == pytest.approx(30 * 0.76 * 0.8)


def test_what_the_code_has_no_figure_for_is_not_rated() -> None:
    checked = run.check(SPECS / "cedar-house.yaml")
    symbols = {symbol for ratings in checked.ratings.values.values() for symbol in ratings}
    faults = {Symbol.ZE, Symbol.ZS, Symbol.ZS_MAX, Symbol.IA, Symbol.T_MAX, Symbol.UT}
    assert not symbols & (faults | {Symbol.S_THERMAL, Symbol.I2, Symbol.LCRIT})
    assert not any(word in (Word.RCD_TYPE, Word.CURVE, Word.CATEGORY) for _, word in checked.ratings.words)


def test_a_string_without_coefficient_has_a_voltage_and_says_by_which_factor() -> None:
    """690.7(A) has a table for crystalline silicon only; for another module the widest factor, 1.2, is taken."""
    data = json.loads(_spec("NEC 690", {}, {}).model_dump_json(by_alias=True, exclude_unset=True))
    module = data["types"]["modules"]["m"]
    del module["voltage_coefficient"]
    module["technology"] = "thin_film"
    system = build(Spec.model_validate_json(json.dumps(data)))
    voltage = rate(system).get(f"{INPUT}.strings.0", Symbol.UOC_MAX)
    assert voltage is not None
    assert voltage.value == pytest.approx(1.2 * 14 * 41)
    assert any("no voltage factor" in str(text) for text in voltage.assumptions)


def test_metric_profiles_print_no_awg() -> None:
    circuit = [{"kind": "breaker"}, {"kind": "cable", "length": "9 m", "section": "10 AWG"}]
    system, ratings = _rated("cautious", {}, circuit=circuit)
    (unit,) = system.of(InverterUnit)
    cable = next(each for each in system.upstream(unit.key) if isinstance(each, Cable))
    assert "5.26" in str(conductors(cable, system, ratings))
    assert "AWG" not in str(conductors(cable, system, ratings))
    assert "AC16" in [finding.code for finding in review(system, ratings)]


def test_strings_that_share_a_fuse_feed_each_other() -> None:
    """690.9(A)(1) by hand: 1.25 · 4 A of the other string on the fuse, and what the fuse lets through."""
    module = {**MODULE, "rated_power": "130 W", "short_circuit_current": "4 A", "mpp_current": "3.77 A"}
    data = json.loads(_spec("NEC 690", {}, {}).model_dump_json(by_alias=True, exclude_unset=True))
    data["types"]["modules"]["m"] = module
    (given,) = data["inverters"]["roof"]["inputs"]
    given["strings_per_fuse"], given["string_fuses"] = 2, {"rated_current": 15}
    given["strings"] = [{"module": "m", "modules_in_series": 14, "count": 4, "cable": {"length": 9}}]
    found = rate(build(Spec.model_validate_json(json.dumps(data)))).get(f"{INPUT}.strings.0.cable", Symbol.IZ_MIN)
    assert found is not None
    assert found.value == pytest.approx(15 + 1.25 * 4)
    del given["strings_per_fuse"], given["string_fuses"]
    given["circuit"] = [{"kind": "fuse", "rated_current": 30}, {"kind": "isolator"}]
    found = rate(build(Spec.model_validate_json(json.dumps(data)))).get(f"{INPUT}.strings.0.cable", Symbol.IZ_MIN)
    assert found is not None
    assert found.value == pytest.approx(30 + 1.25 * 3 * 4), "an array fuse, and three more strings ahead of it"


def test_a_fault_current_can_be_worked_again_from_what_is_printed() -> None:
    """Ohm's law: the printed R and X, not the sum of magnitudes, give the printed current."""
    circuit = [{"kind": "breaker"}, {"kind": "cable", "length": "30 m", "section": "4 AWG"}, {"kind": "isolator"}]
    supply = {"phases": 1, "split_phase": True, "prospective_fault_current": "10 kA"}
    _, ratings = _rated("NEC 690", supply, circuit=circuit, single=True)
    found = ratings.get(UNIT, Symbol.IK_MAX)
    assert found is not None
    printed = {each.symbol: float(each.value) for each in found.given}
    assert printed["U"] / hypot(printed["R"], printed["X"]) / 1000 == pytest.approx(found.value)


@pytest.mark.parametrize(
    ("clearance", "ampacity_a"), [({"roof_clearance": "0.013 m"}, 16.5), ({"roof_clearance": "0.023 m"}, 47), ({}, 47)]
)
def test_a_roof_in_the_sun_warms_what_lies_close_to_it(clearance, ampacity_a) -> None:
    # https://www.electricallicenserenewal.com/Electrical-Continuing-Education-Courses/NEC-Content.php?sectionID=1315:
    # three 8 AWG THWN, 50 A in the 75 °C column, half an inch above a roof at 90 °F: 90 + 60 = 150 °F, 0.33 · 50 A. At
    # 90 °F alone the table has 0.94. (The page prints 3/4 inch for the 7/8 of the code.)
    circuit = [{"kind": "breaker"}, {"kind": "cable", "type": "THWN", "length": 9, "section": "8 AWG", **clearance}]
    circuit[1] |= {"ambient_temperature": "32.2 °C", "terminal_temperature": 75}
    data = json.loads(_spec("NEC 690", {"voltage": "208 V"}, {}).model_dump_json(by_alias=True, exclude_unset=True))
    data["types"]["cables"] = {"THWN": {"temperature_rating": 75}}
    data["inverters"]["roof"]["circuit"] = circuit
    ratings = rate(build(Spec.model_validate_json(json.dumps(data))))
    carries = ratings.get(f"{UNIT}.circuit.1", Symbol.IZ)
    assert carries is not None
    assert carries.value == pytest.approx(ampacity_a)
    assert any("23 mm" in str(text) for text in carries.assumptions) is (ampacity_a == 16.5)


@pytest.mark.parametrize(("method", "ampacity_a"), [({}, 23.2), ({"method": "D2"}, 30), ({"method": "D1"}, 30)])
def test_the_ground_is_not_as_warm_as_the_air_behind_modules(method, ampacity_a) -> None:
    # 310.16, copper of 90 °C: 10 AWG 40 A for 30 °C, 0.58 at 70 °C; terminals of 60 °C 30 A
    data = json.loads(_spec("NEC 690", {"voltage": "208 V"}, {}).model_dump_json(by_alias=True, exclude_unset=True))
    string = data["inverters"]["roof"]["inputs"][0]["strings"][0]
    string["cable"] = {"length": 15, "section": "10 AWG", "grouped_circuits": 1, **method}
    ratings = rate(build(Spec.model_validate_json(json.dumps(data))))
    carries = ratings.get(f"{UNIT}.inputs.0.strings.0.cable", Symbol.IZ)
    assert carries is not None
    assert carries.value == pytest.approx(ampacity_a)


def test_batteries_and_inputs_have_their_totals_under_the_nec() -> None:
    ratings = run.check(DESIGNS / "us-hybrid-house.yaml").ratings
    # 5 kW at the lowest voltage of the battery, 45 V
    assert ratings.get("batteries.wall", Symbol.IB).value == pytest.approx(5000 / 45)
    for at in ("inverters.garage.inputs.0", "inverters.garage.inputs.1"):  # one string on one cable each
        drop = ratings.get(f"{at}.strings.0.cable", Symbol.DU_DC_CABLE)
        assert ratings.get(at, Symbol.DU_DC).value == pytest.approx(drop.value)
