"""Operation and maintenance: what the spec and the makers state, each under its heading, and a blank for the rest."""

from __future__ import annotations

from typing import Any

import pytest
from test_documents_procedure import fields, rows, spec
from test_documents_switching import STORE

from sld import run
from sld.documents.cell import State
from sld.documents.document import Document
from sld.documents.section import Form, Paragraphs, Table
from sld.documents.upkeep.document import upkeep
from sld.words import ENGLISH

WHOLE = {
    "mass": "18.5 kg", "clearance_above": "400 mm", "clearance_below": "350 mm", "clearance_beside": "150 mm",
    "clearance_front": "800 mm", "ip": "IP65", "temperature_min": "-25 °C", "temperature_max": "55 °C",
}  # fmt: skip
TEXTS = {
    "operation": ["Look at the display.", "Compare the yield."], "faults": ["Call the installer."],
    "emergency": ["Call the fire service."], "maintenance": ["Clean the filter."], "building_works": ["Mind the roof."],
}  # fmt: skip
WARRANTIES = [
    {"of": "modules", "by": "Brightfell", "start": "2026-06-26", "years": 15},
    {"of": "inverter"},
]


def made(data: dict[str, Any]) -> Document:
    checked = run.check_mapping(data)
    return upkeep(checked.system, checked.ratings, checked.findings, ())


def site() -> dict[str, Any]:
    """Four inverters, of a type with everything stated and of two with nothing, a battery and two junction boxes."""
    data = spec()
    data["site"]["locations"] = {"loft": {}, "yard": {"outdoor": True}, "hall": {}}
    types = data["types"]["inverters"]
    types["S"] = types["R"] = dict(types["T"])
    types["T"] |= {
        "make": "Tarnholt", "model": "T9", "mounting": WHOLE, "discharge_time": "5 min",
        "switching_on": ["DC switch", "AC breaker", "wait for the display"],
    }  # fmt: skip
    roof = data["inverters"]["roof"]
    data["inverters"] = {
        "roof": {**roof, "location": "loft"}, "shed": {**roof, "type": "S"}, "barn": {**roof, "location": "loft"},
        "mill": {**roof, "type": "R"},
    }  # fmt: skip
    data["junction_boxes"] = {"b1": {"location": "yard", "mounting": {"ip": "IP66"}}, "b2": {}}
    data["batteries"] = {"store": {**STORE, "location": "hall", "mounting": {"mass": "110 kg"}}}
    data["upkeep"] = TEXTS | {"warranties": WARRANTIES}
    return data


@pytest.fixture(scope="module")
def whole() -> Document:
    return made(site())


@pytest.fixture(scope="module")
def bare() -> Document:
    return made(spec())


def test_sections_stand_in_the_order_of_use(whole: Document) -> None:
    assert [(each.name, ENGLISH.say(each.title)) for each in whole.sections] == [
        ("notes", "Notes"), ("operation", "Operation and maintenance"), ("warranties", "Warranties"),
        ("starting", "Discharge and switching on"), ("mounting", "Mounting"), ("mounting_notes", "For those who mount"),
    ]  # fmt: skip
    assert ENGLISH.say(whole.title.document_type) == "Operation and maintenance"


HEADS = {
    "warranties": ["Warranty of", "Given by", "Begins", "Years"],
    "starting": ["Inverter", "Time of discharge", "Order of switching on, as the maker states it"],
    "mounting": ["Designation", "Place", "Mass", "Clearances", "Enclosure", "Air temperature"],
}


@pytest.mark.parametrize("name", HEADS)
def test_headings_and_figures_that_stand_on_the_right(whole: Document, name: str) -> None:
    (table,) = [each for each in whole.sections if isinstance(each, Table) and each.name == name]
    assert [ENGLISH.say(each.heading) for each in table.columns] == HEADS[name]
    on_the_right = {ENGLISH.say(each.heading) for each in table.columns if each.right}
    assert on_the_right == {"Mass", "Years"} & set(HEADS[name])


def test_each_text_stands_under_its_caption(whole: Document) -> None:
    assert [(caption, ENGLISH.say(cell)) for caption, cell in fields(whole, "operation").items()] == [
        ("Check of correct operation", "Look at the display. Compare the yield."),
        ("In the event of a fault", "Call the installer."),
        ("Emergency", "Call the fire service."),
        ("Maintenance and cleaning", "Clean the filter."),
        ("Works on the building", "Mind the roof."),
    ]


def test_each_text_is_looked_for_by_the_list_of_what_is_asked(whole: Document) -> None:
    answers = [cell.answers.removeprefix("upkeep.") for cell in fields(whole, "operation").values()]
    assert answers == ["operation", "faults", "emergency", "maintenance", "building_works"]


def test_warranties(whole: Document) -> None:
    assert rows(whole, "warranties") == [("modules", "Brightfell", "2026-06-26", "15"), ("inverter", "–", "–", "–")]


def test_switching_on_as_the_maker_states_it_by_type(whole: Document) -> None:
    """5 min are 300 s; a row for each type, those without a model by their names."""
    assert rows(whole, "starting") == [
        ("Tarnholt T9", "300 s", "1. DC switch; 2. AC breaker; 3. wait for the display"), ("S", "–", "–"),
        ("R", "–", "–"),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("stated", "told"),
    [({"discharge_time": "60 s"}, ("60 s", "–")), ({"switching_on": ["DC switch"]}, ("–", "1. DC switch"))],
)
def test_either_is_told_without_the_other(stated: dict[str, Any], told: tuple[str, str]) -> None:
    data = spec()
    data["types"]["inverters"]["T"] |= stated
    assert rows(made(data), "starting") == [("T", *told)]


def test_what_is_mounted(whole: Document) -> None:
    """Equal inverters in one place stand in one row."""
    assert rows(whole, "mounting") == [
        ("-TB1, -TB3", "loft", "18.5 kg", "above 400 mm, below 350 mm, beside 150 mm, in front 800 mm", "IP65",
         "from -25 °C to 55 °C"),
        ("-TB2, -TB4", "–", "–", "–", "–", "–"),
        ("-GB1", "hall", "110 kg", "–", "–", "–"),
        ("-XD1", "yard (outdoors)", "–", "–", "IP66", "–"),
        ("-XD2", "–", "–", "–", "–", "–"),
    ]  # fmt: skip


ONE_OF_THEM = [
    ({"clearance_above": "0 mm"}, 3, "above 0 mm"),
    ({"clearance_below": "0 mm"}, 3, "below 0 mm"),
    ({"clearance_beside": "1234.5 mm"}, 3, "beside 1234.5 mm"),
    ({"clearance_front": "0 mm"}, 3, "in front 0 mm"),
    ({"temperature_min": "0 °C"}, 5, "from 0 °C"),
    ({"temperature_max": "50 °C"}, 5, "to 50 °C"),
]


@pytest.mark.parametrize(("stated", "place", "told"), ONE_OF_THEM)
def test_what_is_stated_alone_is_told_alone(stated: dict[str, str], place: int, told: str) -> None:
    data = spec()
    data["types"]["inverters"]["T"]["mounting"] = stated
    ((*row,),) = rows(made(data), "mounting")
    assert row[2:] == ["–" if each != place else told for each in range(2, 6)]


def notes(document: Document) -> list[str]:
    (found,) = [each for each in document.sections if isinstance(each, Paragraphs) and each.name == "mounting_notes"]
    assert found.numbered
    return [ENGLISH.say(each) for each in found.paragraphs]


def test_those_who_mount_read_what_is_heavy_first(whole: Document, bare: Document) -> None:
    first, second = notes(whole)
    assert first == (
        "The wall bears a multiple of the mass, as the maker states it: -TB1 18.5 kg, -TB3 18.5 kg and -GB1 110 kg."
    )
    assert second.startswith("Not on or beside combustible material")
    assert notes(bare) == [second]


def test_without_anything_stated_there_is_a_row_to_fill_in(bare: Document) -> None:
    cells = [cell for each in bare.sections if isinstance(each, Form) for _, cell in each.fields]
    cells += [cell for each in bare.sections if isinstance(each, Table) for row in each.rows for cell in row]
    assert {ENGLISH.say(cell) for cell in cells if cell.state is State.BLANK} == {"–"}
    assert [ENGLISH.say(cell) for cell in cells if cell.state is State.GIVEN] == ["T", "-TB1"]
    assert [len(rows(bare, name)) for name in ("warranties", "starting", "mounting")] == [1, 1, 1]
