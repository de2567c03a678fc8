"""What the designer wrote is on the sheets, and nothing of the program's own words is."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
import yaml

from sld import run
from sld.documents.drawing.data_bus import data_bus
from sld.documents.drawing.equipment import equipment
from sld.documents.drawing.notes import basis, cautions
from sld.documents.drawing.schedules import cables, strings
from sld.documents.drawing.summary import summary
from sld.documents.section import Paragraphs, Table
from sld.documents.title import title
from sld.finding import Severity
from sld.layout.diagram.flags import numbered
from sld.model import build
from sld.rules import review
from sld.sheet.worded import plain
from sld.spec.complain import validate
from sld.spec.document import Spec
from sld.spec.source import read_text
from sld.steps import rate
from sld.symbols.stroke import Text
from sld.words import ENGLISH, language

SPECS = Path(__file__).parents[2] / "specs"
DATA: dict[str, Any] = yaml.safe_load((SPECS / "village-hall.yaml").read_text(encoding="utf-8"))


def system_of(data: dict[str, Any]):
    spec, mistakes = validate(Spec, read_text(yaml.safe_dump(data, allow_unicode=True), folder=SPECS))
    assert spec is not None, mistakes
    return build(spec)


HALL = system_of(DATA)
RATINGS = rate(HALL)


def said(table: Table) -> list[tuple[str, ...]]:
    return [tuple(ENGLISH.say(cell) for cell in row) for row in table.rows]


def told(section: Paragraphs) -> list[str]:
    return [ENGLISH.say(text) for text in section.paragraphs]


@pytest.mark.parametrize(
    ("designation", "words"),
    [
        ("36 ×", ("PV module", "Brightfell BF-410", "410 Wp")),
        ("-UC1-FA1", ("surge protective device", "type 2 (T2)", "Uc 275 V", "-UC1, meter room")),
        ("-TB1-FA1, -TB1-FA2", ("DC surge protective device", "In 15 kA", "Up 3.5 kV")),
        # 50 A gG stands 350 A for 0.1 s (IEC 60269-1 Table 3)
        # 18.2 A takes a C20 (433.1): 2/3 · 230 V / 200 A (IEC 60364-6)
        ("-TB1-FC1", ("circuit-breaker", "C 20 A", "selective up to 350 A", "read Zs ≤ 0.767 Ω")),
        ("-TB1", ("inverter", "meter room", "DC ≤ ")),
        ("-EZ1", ("load", "lighting and kitchen", "existing")),
    ],
)
def test_equipment_schedule_has(designation: str, words: tuple[str, ...]) -> None:
    (row,) = [row for row in said(equipment(HALL, RATINGS)) if row[0] == designation]
    assert not [word for word in words if word not in " | ".join(row)]


@pytest.mark.parametrize(
    ("table", "words"),
    [
        (strings(HALL, RATINGS), ("18 × BF-410", "7.38 kWp", "SE, 30°")),
        (cables(HALL, RATINGS), ("NYM-J 5 × 2.5 mm²", "1.5 kV DC", "38 m")),
        (data_bus(HALL, RATINGS), ("Modbus RTU", "2 × 2 × 0.8 mm² shielded", "120 Ω, built in", "Ethernet", "9 m")),
    ],
)
def test_schedule_has(table: Table, words: tuple[str, ...]) -> None:
    text = " | ".join(cell for row in said(table) for cell in row)
    assert not [word for word in words if word not in text]


@pytest.mark.parametrize(
    ("path", "value", "text"),
    [
        ("supply.operator", "Upper valley network", "Network operator: Upper valley network."),
        ("project.reference", "VH/14", "Project reference: VH/14."),
        ("earthing.note", "terminal behind the boiler", "Earthing: terminal behind the boiler."),
    ],
)
def test_notes_have(path: str, value: str, text: str) -> None:
    block, key = path.split(".")
    assert text in told(basis(system_of({**DATA, block: {**DATA[block], key: value}})))


@pytest.mark.parametrize(
    ("given", "notes"),
    [
        ({}, []),
        ({"designer": {"company": "Weir office"}}, ["Designer: Weir office."]),
        ({"installer": {"company": "Weir works"}}, ["Installer: Weir works."]),
        ({"installed": "2026-03-02"}, ["System installed 2026-03-02."]),
        ({"commissioned": "2026-03-09"}, ["System commissioned 2026-03-09."]),
        ({"installed": "2026-03-02", "commissioned": "2026-03-09"},
         ["System installed 2026-03-02, commissioned 2026-03-09."]),
    ],
)  # fmt: skip
def test_notes_have_those_who_design_and_install_and_the_days_that_are_given(
    given: dict[str, Any], notes: list[str]
) -> None:
    ours = {key: value for key, value in DATA["project"].items() if key not in WHO_AND_WHEN}
    found = told(basis(system_of({**DATA, "project": {**ours, **given}})))
    assert [text for text in found if text.startswith(("Designer", "Installer", "System "))] == notes


@pytest.mark.parametrize(
    ("given", "text"),
    [
        # 4 mm² five-core of 14 mm outside diameter in 27 mm: (14 / 27)² = 27 %
        ({"conduit": "duct", "outside_diameter": "14 mm"}, "conduit duct, M32 rigid, 27 mm, 26.9 % filled"),
        ({"name": "west run", "note": "behind the stairs"}, "west run, behind the stairs"),
        ({"capacity_factor": 0.9, "capacity_factor_reason": "maker"}, "× 0.9 for maker"),
        ({"capacity_factor": 0.9}, "× 0.9"),
    ],
)
def test_cable_schedule_says_how_a_cable_is_laid(given: dict[str, Any], text: str) -> None:
    hall = DATA["inverters"]["hall"]
    circuit = [{**each, **given} if each["kind"] == "cable" else each for each in hall["circuit"]]
    site = {**DATA["site"], "conduits": {"duct": {"inside_diameter": "27 mm", "trade_size": "M32 rigid"}}}
    system = system_of({**DATA, "site": site, "inverters": {"hall": {**hall, "circuit": circuit}}})
    (row,) = [row for row in said(cables(system, rate(system))) if row[0] == "-TB1-WD1"]
    assert text in " | ".join(row)


@pytest.mark.parametrize(
    ("changes", "designation", "text"),
    [
        ({"batteries": {"store": {"energy": "10 kWh", "converter_power": "5 kVA", "galvanic_separation": True}}},
         "-GB1", "galvanic separation"),
        ({"boards": {"main": {**DATA["boards"]["main"], "diversity_factor": 0.8}}}, "-UC1", "RDF 0.8"),
    ],
)  # fmt: skip
def test_equipment_schedule_says_what_is_given(changes: dict[str, Any], designation: str, text: str) -> None:
    system = system_of({**DATA, **changes})
    (row,) = [row for row in said(equipment(system, rate(system))) if row[0] == designation]
    assert text in " | ".join(row)


WHO_AND_WHEN = ("designer", "installer", "installed", "commissioned")


@pytest.mark.parametrize(
    ("place", "text"),
    [
        ({"ambient_temperature": "45 °C"}, "Places: loft 45 °C."),
        ({"building": "barn"}, "Places: loft in barn."),
        ({"outdoor": True}, "Places: loft outdoors."),
        ({"building": "barn", "outdoor": True, "ambient_temperature": "45 °C"},
         "Places: loft in barn outdoors 45 °C."),
    ],
)  # fmt: skip
def test_notes_have_what_is_given_of_a_place(place: dict[str, Any], text: str) -> None:
    used = {name: {} for name in DATA["site"]["locations"]}
    found = told(basis(system_of({**DATA, "site": {**DATA["site"], "locations": {**used, "loft": place}}})))
    assert [each for each in found if text in each]


BATTERY = {"batteries": {"store": {"energy": "10 kWh", "converter_power": "5 kVA"}}}
GENERATOR = {"generators": {"diesel": {"power": "10 kVA", "changeover": "four-pole change-over switch"}}}


@pytest.mark.parametrize(
    ("changes", "sources"),
    [
        ({}, "two sources of supply. Isolate the public supply and every inverter before"),
        (BATTERY, "several sources of supply. Isolate the public supply, every inverter and every battery before"),
        (GENERATOR, "several sources of supply. Isolate the public supply, every inverter and every generator before"),
        (BATTERY | GENERATOR, "public supply, every inverter, every battery and every generator before"),
    ],
)
def test_the_warning_names_every_kind_of_source(changes: dict[str, Any], sources: str) -> None:
    """IEC 60364-7-712 712.514 asks for a notice of all sources of supply (from memory)."""
    assert sources in told(cautions(system_of({**DATA, **changes})))[0]


def with_type(changes: dict[str, Any]) -> dict[str, Any]:
    """Return the hall with an inverter type of its own."""
    small = {"rated_power": "12 kW", "phases": 3, "dc_voltage_max": "1000 V", "mpp_voltage_min": "200 V",
             "mpp_voltage_max": "850 V", "dc_switch": True,
             "inputs": [{"count": 2, "current_max": "20 A", "short_circuit_current_max": "30 A"}]}  # fmt: skip
    hall = {**DATA["inverters"]["hall"], "type": "Own"}
    return {**DATA, "types": {"inverters": {"Own": {**small, **changes}}}, "inverters": {"hall": hall}}


@pytest.mark.parametrize(
    ("changes", "text"),
    [
        ({}, "Interface protection is taken to be built into -TB1; not stated."),
        ({"interface_protection": True}, "Interface protection is built into -TB1."),
    ],
)
def test_an_assumed_interface_protection_is_not_printed_as_a_fact(changes: dict[str, Any], text: str) -> None:
    assert text in told(basis(system_of(with_type(changes))))


def test_what_a_battery_leaves_open_is_said() -> None:
    begins = "Battery side of -GB1: isolation and protection of its direct current are not in this drawing"
    assert any(text.startswith(begins) for text in told(basis(system_of({**DATA, **BATTERY}))))
    assert not any("Battery side" in text for text in told(basis(HALL)))


@pytest.mark.parametrize(
    ("changes", "row"),
    [
        ({}, ("Feed-in limit", "8 kW")),
        ({"supply": {key: DATA["supply"][key] for key in ("earthing_system", "service_fuse")}},
         ("Feed-in limit", "none stated")),
        (BATTERY, ("Batteries, usable energy and converters", "10 kWh, 5 kVA")),
    ],
)  # fmt: skip
def test_summary_has(changes: dict[str, Any], row: tuple[str, str]) -> None:
    system = system_of({**DATA, **changes})
    cells = [cell for each in said(summary(system, rate(system))) for cell in each]
    assert row in list(pairwise(cells))


def test_folding_never_changes_the_count() -> None:
    """What is told of equal devices under one number is counted once a device, as everywhere else."""
    hall = {**DATA["inverters"]["hall"], "count": 3, "circuit": []}
    system = system_of({**DATA, "inverters": {"hall": hall}, "data": {}})
    findings = review(system, rate(system))
    flags = numbered(system, findings)
    folded = sum(flag.findings[0].severity is Severity.NON_COMPLIANCE for flag in flags)
    count = sum(finding.severity is Severity.NON_COMPLIANCE for finding in findings)
    assert f"{count} non-compliance" in str(title(system, findings).findings)
    assert count > folded > 0


@pytest.mark.parametrize(
    ("text", "printed"),
    [
        ("give `lightning_density` under `site`", "give lightning density under site"),
        ("at least 10 mm²", "at least 10 mm²"),
        ("a name with one ` of its own", "a name with one ` of its own"),
    ],
)
def test_words_of_the_spec_are_plain_on_paper(text: str, printed: str) -> None:
    assert plain(text, ENGLISH) == printed


def test_words_of_the_spec_are_set_off_in_a_sentence_of_another_language() -> None:
    assert (
        plain("`lightning_density` unter `site` angeben", language("de")) == "„lightning_density“ unter „site“ angeben"
    )


@pytest.mark.parametrize("name", ["village-hall", "upper-farm-faulty"])
def test_no_mark_and_no_underscore_is_printed(name: str) -> None:
    sheets = run.draw(run.check(SPECS / f"{name}.yaml")).sheets
    texts = [s.text for sheet in sheets for group in sheet.groups for s in group.strokes if isinstance(s, Text)]
    assert not [text for text in texts if "`" in text or "_" in text]
