"""What a reader finds on the sheets beside the drawing: which section comes where, and what stands in which cell."""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest
from test_documents_procedure import STRINGS, fields, made, rows, spec
from test_documents_switching import STORE, plant
from test_documents_switching import made as switched

from sld import run
from sld.documents.cell import State
from sld.documents.completeness.asked import ASKED, ASKERS
from sld.documents.document import Document
from sld.documents.drawing.inverters import backup_words
from sld.documents.notices.places import data as place_data
from sld.documents.notices.places import where
from sld.documents.registry import KINDS
from sld.documents.section import Paragraphs, Table
from sld.grid.notices import Datum, Site
from sld.model.system import System
from sld.spec.blocks.inverter import BackupOutput
from sld.words import ENGLISH

IN_ORDER = {
    "procedure": (
        "Procedure", "What to do, and when", "Documents asked for", "Points asked for on the diagram",
        "Limits of the grid rules", "How far to rely on it",
    ),
    "settings": (
        "Settings sets", "Protection settings", "Interface protection", "Feed-in limit", "Reactive power", "Read back",
    ),
    "switching": (
        "Before anything is switched", "Sources", "Isolating the site", "What stays live", "Switching on again",
        "Isolating one source",
    ),
    "notices": ("Notices", "Labels by device, at print size"),
    "particulars": (
        "Installation", "Application", "Parties", "Connection to the network", "Powers", "Modules", "Inverters",
        "Certificates of the inverters", "Characteristics of the inverters", "Meters",
    ),
}  # fmt: skip
"""What is decided first, what it rests on last; what stays live before anybody switches on again."""

TITLES = {
    "procedure": "Procedure with the network operator",
    "settings": "Settings",
    "switching": "Switching sheet",
    "notices": "Notices at the site",
    "particulars": "Particulars of the installation",
}


@cache
def sheet(kind: str, country: str = "GB") -> Document:
    """A sheet of the plant with places, a numbered meter, a feed-in limit and a curve that the inverter is set to."""
    data = plant(export_limit="6900 W")
    data["supply"]["country"] = country
    data["boards"]["main"]["circuit"].insert(0, {"kind": "meter", "purpose": "supply", "number": "88 104"})
    data["boards"]["main"]["location"] = "hall"
    points = [{"voltage": "94 %", "reactive_power": "20 %"}, {"voltage": "106 %", "reactive_power": "-20 %"}]
    data["inverters"]["roof"] |= {"location": "loft", "network_settings": {"set": "generic", "q_of_u": points}}
    checked = run.check_mapping(data)
    return KINDS[kind].make(checked.system, checked.ratings, checked.findings, ())


@pytest.mark.parametrize("kind", IN_ORDER)
def test_sections_stand_in_the_order_of_use(kind: str) -> None:
    document = sheet(kind)
    titles = tuple(ENGLISH.say(section.title) for section in document.sections)
    assert tuple(title for title in titles if title != "Notes") == IN_ORDER[kind]
    assert ENGLISH.say(document.title.document_type) == TITLES[kind]


@pytest.mark.parametrize(
    ("country", "point", "told"),
    [
        ("AU", "Meters with their numbers", "-UC1-PG1: 88 104"),
        ("AU", "Measuring, control and communication", "not given"),
        ("AU", "Earthing system and electrode", "TN-S"),
        ("AU", "Main switch with its rated current", "-UC1-QB1 63 A"),
        ("FR", "Modules and strings", "-TB1-GC1: 12 × M"),
        ("AT", "Storage and how it is coupled", "no storage"),
    ],
)
def test_a_point_is_answered_by_its_own_words(country: str, point: str, told: str) -> None:
    assert {row[0]: row[1] for row in rows(sheet("procedure", country), "grid_points")}[point] == told


@pytest.mark.parametrize(
    ("country", "notice", "at"),
    [
        ("AU", "Isolators do not make the array dead", "-TB1, loft"),
        ("GB", "DC isolator of the PV array; live in daylight", "-TB1-QB2, -TB1-QB3"),  # no place is written there
        ("US", "Conductors of the PV array", "-TB1-WD1"),
        ("DE", "Plan for the fire service", "entrance of the building"),
    ],
)
def test_a_notice_stands_at_a_device_and_its_place(country: str, notice: str, at: str) -> None:
    assert {row[0]: row[2] for row in rows(sheet("notices", country), "notices")}[notice] == at


def test_a_notice_is_read_under_its_headings_and_ticked_by_hand() -> None:
    (table,) = [each for each in sheet("notices").sections if isinstance(each, Table) and each.name == "notices"]
    assert [ENGLISH.say(each.heading) for each in table.columns] == [
        "Notice", "Text", "At", "Data", "Standing", "Fixed",
    ]  # fmt: skip
    assert {(ENGLISH.say(row[5]), row[5].state) for row in table.rows} == {("□", State.BLANK)}


def test_a_paper_is_due_before_work_or_after_commissioning() -> None:
    """Great Britain: type-test reference first, data sheet (Form B) with the notification after commissioning."""
    assert [(row[0], row[2]) for row in rows(sheet("procedure"), "grid_papers")] == [
        ("Certificate or type-test reference of each inverter", "before work begins"),
        ("Data sheet of the generating plant, on the operator's form", "after commissioning"),
    ]


def test_work_begins_on_the_day_of_installation_where_no_other_is_given() -> None:
    """Installed on 2026-04-27, commissioned a week later: what is due before work is due on the former."""
    data = spec()
    data["project"]["installed"] = "2026-04-27"
    assert ("before work begins", "2026-04-27") in {row[:2] for row in rows(made(data), "grid_tasks")}


@pytest.mark.parametrize(
    ("power", "phases", "told"),
    [
        # 3456.7 VA / 230 V = 15.03 A; 12345.6 VA / (3 · 230 V) = 17.89 A: watts in full, kVA to four digits
        ("3456.7 W", 1, "3.457 kVA on one line: 3456.7 / 230 = 15.03 A a line"),
        ("12345.6 W", 3, "12.35 kVA three-phase: 12345.6 / (3 × 230) = 17.89 A a line"),
    ],
)
def test_the_arithmetic_has_its_inputs_in_full(power: str, phases: int, told: str) -> None:
    data = spec()
    data["types"]["inverters"]["T"] |= {"rated_power": power, "phases": phases}
    data["inverters"]["roof"] |= {"line": "L2"} if phases == 1 else {}
    assert ENGLISH.say(fields(made(data), "procedure")["Current of a line"]) == told


def test_the_arithmetic_of_both_kinds_has_its_inputs_in_full() -> None:
    """12345.6 / (3 · 230) + 3456.7 / 230 = 17.892 + 15.029 = 32.92 A."""
    data = spec()
    data["types"]["inverters"]["T"]["rated_power"] = "12345.6 W"
    data["types"]["inverters"]["S"] = {**data["types"]["inverters"]["T"], "rated_power": "3456.7 W", "phases": 1}
    data["inverters"]["shed"] = {**data["inverters"]["roof"], "type": "S", "line": "L2"}
    assert ENGLISH.say(fields(made(data), "procedure")["Current of a line"]) == (
        "12.35 kVA three-phase and 3.457 kVA on one line: 12345.6 / (3 × 230) + 3456.7 / 230 = 32.92 A a line"
    )


def test_a_feed_in_limit_is_a_power_and_a_curve_is_told_by_its_name() -> None:
    form = {caption: ENGLISH.say(cell) for caption, cell in fields(sheet("settings"), "export").items()}
    assert form["Feed-in limit"] == form["Highest power fed in"] == "6.9 kW"
    assert [row[1] for row in rows(sheet("settings"), "reactive")] == ["Q(U); power factor 1"]


def test_switching_on_names_the_product() -> None:
    data = plant()
    data["types"]["inverters"]["T"] |= {"make": "Tarnholt", "model": "T9"}
    assert {row[0] for row in rows(switched(data), "restore")} == {"Tarnholt T9"}


def test_who_asks_for_what() -> None:
    """A permit office asks for licence and land; papers for whoever operates the plant are no matter of the network."""
    asked = {ENGLISH.say(each.what): {ENGLISH.say(ASKERS[by]) for by in each.by} for each in ASKED}
    assert asked["Licence of the installer"] == {"operator", "permit office"}
    assert asked["Parcel of land"] == {"permit office"}
    assert asked["Backup output and what it supplies"] == {"operator", "inspector"}
    assert asked["Maintenance and cleaning"] == {"inspector", "owner"}
    for each in ASKED:  # the same order in every row, so that a column is read at a glance
        assert list(each.by) == [by for by in ASKERS if by in each.by]


def test_a_text_to_be_read_where_it_stands_is_not_copied_into_the_list() -> None:
    long = {each.answers for each in ASKED if each.is_long}
    assert long >= {f"upkeep.{text}" for text in ("operation", "faults", "emergency", "maintenance", "building_works")}
    assert not long & {"address", "installer", "supply_point", "settings"}


def heads(document: Document, name: str) -> list[str]:
    (table,) = [each for each in document.sections if isinstance(each, Table) and each.name == name]
    return [ENGLISH.say(each.heading) for each in table.columns]


def of_kind(kind: str, data: dict[str, Any]) -> Document:
    checked = run.check_mapping(data)
    return KINDS[kind].make(checked.system, checked.ratings, checked.findings, ())


def test_papers_that_are_there_come_before_those_that_are_missing() -> None:
    """A manual without a date and a plan are given; data sheets of both types, another plan and tests are not."""
    data = spec()
    plan = {"kind": "site_plan", "title": "Plot", "file": "plot.pdf", "date": "2026-04-28"}
    data["documents"] = [{"kind": "manual", "of": "T", "title": "T in brief", "reference": "T-7"}, plan]
    document = of_kind("papers", data)
    assert heads(document, "papers") == ["Kind", "About", "Title", "File or reference", "Date"]
    assert rows(document, "papers") == [
        ("manual", "T", "T in brief", "T-7", "–"),
        ("site plan", "–", "Plot", "plot.pdf", "2026-04-28"),
        ("data sheet", "M", "–", "–", "–"),
        ("data sheet", "T", "–", "–", "–"),
        ("array plan", "–", "–", "–", "–"),
        ("test record", "–", "–", "–", "–"),
    ]


def test_particulars_are_read_under_their_captions() -> None:
    document = sheet("particulars")
    assert list(fields(document, "project")) == [
        "Installation", "Address of the site", "Customer", "Project reference", "Date of installation",
        "Date of commissioning",
    ]  # fmt: skip
    assert heads(document, "certificates") == ["Inverter", "Standard", "Reference", "Issued by", "Date"]


def test_values_of_storage_backup_and_limiter_have_all_their_digits() -> None:
    data = plant(export_limit="6900 W")
    data["boards"]["main"]["circuit"].append({"kind": "meter", "id": "at", "purpose": "feed_in_limit"})
    limiter = {"sensor": "at", "inverters": ["roof"], "fail_safe_time": "100.5 s", "fail_safe_power": "1.255 kW"}
    data["inverters"]["roof"]["feed_in_limit"] = limiter
    data["types"]["inverters"]["T"]["backup"] = {"power": "4.125 kVA", "short_circuit_current": "25 A"}
    data["batteries"] = {"store": {**STORE, "energy": "12.55 kWh"}}
    document = of_kind("particulars", data)
    (limited,) = rows(document, "feed_in_limiters")
    (stored,) = rows(document, "batteries")
    (kept,) = rows(document, "backups")
    assert limited[2:] == ("-TB1", "100.5 s", "1.255 kW")
    assert (stored[3], stored[5]) == ("12.55 kWh", "DC side of -TB1")
    assert kept[:3] == ("-TB1", "4.125 kVA", "25 A")
    assert "Backup supply" in {ENGLISH.say(section.title) for section in document.sections}


def test_a_breaker_of_a_source_stays_where_the_sum_of_devices_is_counted() -> None:
    """NEC 705.12: the notice stands at the board whose busbar is judged by the sum of its devices."""
    data = plant()
    data["supply"]["country"] = "US"
    data["boards"]["main"]["source_connection"] = "sum_of_devices"
    at = {row[0]: row[2] for row in rows(of_kind("notices", data), "notices")}
    assert at["Breaker of the source not to be moved"] == "-UC1"


def test_a_notice_of_the_current_has_that_of_the_inverter() -> None:
    """9000 W / (√3 · 400 V) = 12.99 A."""
    checked = run.check_mapping(plant())
    assert ENGLISH.say(place_data(checked.system, checked.ratings, Datum.AC_CURRENT)) == "13 A"


def test_a_battery_with_a_converter_is_opened_on_its_ac_side_alone() -> None:
    data = plant()
    store = {"converter_power": "3 kVA", "energy": "10 kWh", "connected_to": "main"}
    data["batteries"] = {"store": {**store, "circuit": [{"kind": "breaker", "rated_current": "16 A"}]}}
    (stored,) = [row for row in rows(switched(data), "source_list") if row[1] == "battery"]
    assert "-GB1-FC1" in stored[3]
    assert stored[4] == "–"


NUMBERS = {
    "calculation": 1, "equipment": 2, "cables": 3, "strings": 4, "string_plan": 5, "labels": 6, "findings": 7,
    "particulars": 8, "upkeep": 9, "papers": 10,
}  # fmt: skip


def test_each_document_has_a_number_of_its_own_behind_that_of_the_drawing() -> None:
    data = plant()
    data["project"]["reference"] = "R-5"
    told = {kind: of_kind(kind, data).title.identification_number for kind in KINDS}
    assert {kind: told[kind] for kind in NUMBERS} == {kind: f"R-5.{part}" for kind, part in NUMBERS.items()}
    assert told["drawing"] == "R-5"
    assert len(set(told.values())) == len(told)


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ({"reference": "R-5"}, "single-line diagram R-5."),
        ({"reference": "R-5", "drawing_number": "MV-01"}, "single-line diagram MV-01."),
        (
            {"drawing_number": "MV-01", "revisions": [
                {"index": "A", "date": "2026-04-01", "change": "first"},
                {"index": "B", "date": "2026-05-01", "change": "second"},
            ]},
            "single-line diagram MV-01, revision B.",
        ),
        ({}, "single-line diagram."),
    ],
)  # fmt: skip
def test_a_document_names_the_drawing_whose_designations_it_uses(said: dict[str, Any], told: str) -> None:
    data = plant()
    data["project"] |= said
    notes = of_kind("upkeep", data).sections[0]
    assert isinstance(notes, Paragraphs)
    first, second = map(ENGLISH.say, notes.paragraphs)
    assert first.startswith("Design aid.")
    assert second.endswith(f"The designations are those of the {told}")
    assert (notes.numbered, notes.sign) == (True, "warning_triangle")


def test_powers_stand_in_kilowatts_under_their_captions() -> None:
    """12 · 410 W = 4.92 kWp; 9000 W / (√3 · 400 V) = 12.99 A; without a cable no voltage rise is known."""
    form = fields(sheet("particulars"), "powers")
    assert [(caption, ENGLISH.say(cell), cell.answers) for caption, cell in form.items()] == [
        ("Rated DC power, modules at STC", "4.92 kWp", "dc_power"), ("Rated AC power", "9 kW", "ac_power"),
        ("Highest apparent power", "9 kVA", "apparent_power"),
        ("Export current a line, no diversity", "13 A", "export_current"),
        ("Highest rise to an inverter", "–", "voltage_rise"),
    ]  # fmt: skip


def test_limits_are_read_under_their_headings_who_is_meant_before_how_much() -> None:
    document = sheet("procedure")
    assert heads(document, "grid_limits") == [
        "What follows", "Conditions, and the value here", "Here", "Clause, edition", "Read in", "Standing",
    ]  # fmt: skip
    first, second, *_ = rows(document, "grid_limits")
    assert first[1:4] == ("current of the most loaded line ≤ 16 A; here 13.04 A", "holds", "EREC G98, Issue 1")
    assert second[1:3] == (
        "supply with one phase and rated AC power of inverters and battery converters < 17 kW; here 9 kW",
        "does not hold",
    )


def test_sections_of_the_drawing_stand_in_the_order_in_which_they_are_read() -> None:
    """What it comes to and what is dangerous first, what is looked up last."""
    sections = [getattr(each, "name", each) for each in of_kind("drawing", plant()).sections]
    assert sections == [
        "summary", "cautions", "SHEET_INDEX", "DIFFERENCES", "LEGEND", "notes", "from_memory", "insulation_test",
        "assumptions", "taken", "strings", "cables", "equipment", "earthing",
    ]  # fmt: skip


ASKED_IN_ORDER = """
    drawing procedure settings switching notices
    address application applicant applicant.address applicant.phone account_holder account_number parcel_number
    work_begins commissioning_planned
    customer designer installer installer.phone installer.licence party
    operator supply_point meter_number meter_direction ct_lines contracted_power service_fuse voltage earthing_system
    fault_current
    dc_power ac_power apparent_power export_current export_limit fail_safe voltage_rise
    module orientation inverter serial_number firmware certificate settings settings_edition characteristic backup
    battery battery.serial_number battery.energy battery.coupling
    equipment cables strings string_plan labels calculation findings
    paper.data_sheet paper.manual paper.test_record paper.site_plan paper.array_plan
    installed commissioned
    upkeep.operation upkeep.faults upkeep.emergency upkeep.maintenance upkeep.building_works warranty
    discharge_time switching_on mass clearances enclosure temperature_range
"""


def test_what_is_asked_for_is_listed_by_what_it_is_about() -> None:
    """Documents, site, applicant, people, connection, powers, devices, schedules, papers, days, operation, mounting."""
    assert [each.answers or each.document for each in ASKED] == ASKED_IN_ORDER.split()


@pytest.mark.parametrize(
    ("supplies", "told"),
    [("socket_outlets", "socket-outlets"), ("luminaires", "luminaires"), ("fixed_equipment", "fixed equipment")],
)
def test_what_a_load_supplies_is_told(supplies: str, told: str) -> None:
    data = plant()
    data["loads"] = {"barn": {"power": "2 kW", "phases": 1, "connected_to": "main", "supplies": supplies}}
    (row,) = [row for row in rows(of_kind("equipment", data), "equipment") if row[0] == "-EZ1"]
    others = {"socket-outlets", "luminaires", "fixed equipment"} - {told}
    text = " ".join(row)
    assert told in text
    assert not [each for each in others if each in text]


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ({"separates_neutral": True}, "separates all poles"),
        ({"separates_neutral": False}, "separates the lines alone"),
        ({"neutral_earth_link": True}, "N–PE link while the network is off"),
    ],
)
def test_what_a_backup_output_does_to_the_neutral(said: dict[str, Any], told: str) -> None:
    assert [ENGLISH.say(each) for each in backup_words(BackupOutput(power="3 kVA", **said)) if each] == [told]


AT = [
    (Site.ORIGIN, ["-FC1"]), (Site.METERS, ["-UC1-PG1"]), (Site.BOARDS, ["-UC1"]),
    (Site.AC_ISOLATORS, ["-UC1-QB1, -TB1-QB1"]), (Site.DC_ISOLATORS, ["-TB1-QB2, -TB1-QB3"]),
    (Site.DC_BOXES, ["-XD1, yard"]), (Site.INVERTERS, ["-TB1"]), (Site.INVERTERS_SEVERAL_DC, ["-TB1"]),
    (Site.DC_CABLES, ["-TB1-WD1"]), (Site.BACKUP_BOARDS, []), (Site.BUSBAR_SUM, []), (Site.SHUTDOWN, []),
    (Site.BATTERIES, ["-GB1, hall"]), (Site.ENTRANCE, ["entrance of the building"]),
]  # fmt: skip


@pytest.fixture(scope="module")
def site() -> System:
    data = plant(service_fuse="63 A")
    data["boards"]["main"]["circuit"].insert(0, {"kind": "meter", "purpose": "supply"})
    data["site"]["locations"] = {"yard": {}, "hall": {}}
    data["junction_boxes"] = {"b1": {"location": "yard"}}
    data["batteries"] = {"store": {**STORE, "location": "hall"}}
    return run.check_mapping(data).system


@pytest.mark.parametrize(("at", "told"), AT)
def test_where_a_notice_stands(site: System, at: Site, told: list[str]) -> None:
    assert [ENGLISH.say(each) for each in where(site, at)] == told


def test_every_kind_of_place_has_its_fact() -> None:
    assert [at for at, _ in AT] == list(Site)


def test_without_a_disconnector_a_notice_has_none_to_name() -> None:
    data = spec()
    data["boards"] = {"main": {"circuit": []}}
    data["inverters"]["roof"] |= {"connected_to": "main", "circuit": [], "inputs": [{"circuit": [], **STRINGS[0]}]}
    checked = run.check_mapping(data)
    told = place_data(checked.system, checked.ratings, Datum.DISCONNECTORS)
    assert (ENGLISH.say(told), told.state) == ("not given", State.BLANK)


def test_what_the_spec_answers_is_known_as_given() -> None:
    data = plant(supply_point="GB 12 345")
    data["project"] |= {"customer": "Merren", "address": "Hill Road 1"}
    document = of_kind("particulars", data)
    cells = {cell.answers: cell for name in ("project", "supply") for cell in fields(document, name).values()}
    for asked, said in {"customer": "Merren", "address": "Hill Road 1", "earthing_system": "TN-S"}.items():
        assert (ENGLISH.say(cells[asked]), cells[asked].state) == (said, State.GIVEN)
