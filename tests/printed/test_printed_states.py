"""How each cell of the drawing's tables is known: given, computed, chosen, assumed, to be filled in.

By the words of the spec: what it says is given, what was added up or worked out is computed, what it leaves out and a
standard value was taken for is chosen, what rests on a usual value is assumed.
"""

from __future__ import annotations

import pytest
from printed_sheet import cells, checked

from sld.documents.cell import State
from sld.documents.drawing import schedules
from sld.documents.drawing.data_bus import data_bus
from sld.words import ENGLISH

GIVEN, COMPUTED, CHOSEN = State.GIVEN, State.COMPUTED, State.CHOSEN
ASSUMED, BLANK, NOTHING = State.ASSUMED, State.BLANK, State.NOT_APPLICABLE

STATES = [
    ("workshop", "strings", "-TB1-GC1…3", "Input", GIVEN),
    ("workshop", "strings", "-TB1-GC1…3", "Strings × in series, module, power", COMPUTED),
    ("workshop", "strings", "-TB1-GC1…3", "Uoc STC\n/ max", COMPUTED),
    ("workshop", "strings", "-TB1-GC1…3", "Isc STC\n/ design", ASSUMED),  # the rear irradiance
    ("workshop", "strings", "-TB1-GC1…3", "Orientation, place", GIVEN),
    ("workshop", "cables", "-UC2-WD1", "From – to", GIVEN),
    ("workshop", "cables", "-UC2-WD1", "Cable", GIVEN),
    ("workshop", "cables", "-UC2-WD1", "Length", GIVEN),
    ("workshop", "cables", "-UC2-WD1", "Laid", GIVEN),
    ("workshop", "cables", "-TB2-WD2", "Laid", BLANK),
    ("workshop", "cables", "-UC2-WD1", "Δu", ASSUMED),  # the temperature of the conductor
    ("workshop", "equipment", "47 ×", "Designation", COMPUTED),
    ("workshop", "equipment", "47 ×", "Ratings", GIVEN),
    ("workshop", "equipment", "-UC1-QB1", "Make, model", GIVEN),
    ("workshop", "equipment", "-UC1-PG1", "Make, model", BLANK),
    ("workshop", "equipment", "-UC1-PG1", "Place", GIVEN),
    ("workshop", "equipment", "-UC2", "Place", BLANK),
    ("workshop", "equipment", "-EZ1", "Status", GIVEN),
    ("workshop", "earthing", "-WE1", "Least", COMPUTED),
    ("workshop", "earthing", "-WE1", "Section", GIVEN),
    ("workshop", "earthing", "-WE1", "Length", GIVEN),
    ("workshop", "earthing", "-WE1", "Clause", COMPUTED),
    ("workshop", "earthing", "-WE5", "Section", CHOSEN),  # left out: as the table asks for
    ("workshop", "earthing", "-WE2", "Section", BLANK),
    ("workshop", "summary", "Strings, DC power at STC", "Value, limit, place", COMPUTED),
    ("workshop", "summary", "Firth F310", "Quantity", GIVEN),
    ("workshop", "summary", "Feed-in limit", "Value, limit, place", GIVEN),
    ("workshop", "summary", "Fault current, loop of the supply", "Value, limit, place", GIVEN),
    ("workshop", "summary", "Highest rise to an inverter", "Value, limit, place", ASSUMED),
    ("cottage", "summary", "Feed-in limit", "Value, limit, place", BLANK),
    ("cottage", "summary", "Fault current, loop of the supply", "Value, limit, place", ASSUMED),
    ("workshop", "review", "Supply point", "As designed", GIVEN),
    ("workshop", "review", "Highest apparent power", "As designed", COMPUTED),
    ("workshop", "review", "Feed-in limit", "As designed", GIVEN),
    ("cottage", "review", "Supply point", "As designed", BLANK),
    ("cottage", "review", "Network operator", "As designed", BLANK),
    ("cottage", "review", "Feed-in limit", "As designed", BLANK),
    ("workshop", "review", "Inverter settings", "As designed", GIVEN),
    ("workshop", "terminals", "-UC1-QB1", "Terminals", GIVEN),
    ("workshop", "terminals", "-UC1-QB1", "Torque", GIVEN),
    ("workshop", "terminals", "-UC1-QB1", "Route", BLANK),
    ("workshop", "terminals", "-UC2-WD1", "Route", GIVEN),
    ("workshop", "data_bus", "-WF1", "Address", GIVEN),  # of its last device
    ("workshop", "data_bus", "-WF1", "Terminated", GIVEN),
]


@pytest.mark.parametrize(("spec", "section", "first", "heading", "state"), STATES)
def test_how_it_is_known(spec: str, section: str, first: str, heading: str, state: State) -> None:
    found = cells(spec, "drawing", section, "operator" if section == "review" else "full")
    assert found[first, heading].state is state


# of the schedule of the data side, by the device or both ends
DATA = [
    ("", "Baud rate", GIVEN),  # of the chain itself
    ("", "Length", COMPUTED),
    ("-UC1-PG2", "Cable from the one before", GIVEN),
    ("-KF1", "Address", BLANK),
    ("-KF1 – -TF1", "Length", GIVEN),
    ("-TF1 – -TF2", "Length", BLANK),
]


@pytest.mark.parametrize(("device", "heading", "state"), DATA)
def test_how_it_is_known_of_the_data_side(device: str, heading: str, state: State) -> None:
    found = cells("workshop", "drawing", "data_bus", by="Device,\nfrom – to")
    assert found[device, heading].state is state


# of a row in the calculation: the symbol of its rating, and how that came about
CALCULATED = [
    ("workshop", "main_board", "Icw", "Result", GIVEN),
    ("workshop", "main_board", "ip", "Result", COMPUTED),
    ("cottage", "system", "Ze", "Result", ASSUMED),
    ("workshop", "main_board", "ip", "Formula", COMPUTED),
]


@pytest.mark.parametrize(("spec", "section", "symbol", "heading", "state"), CALCULATED)
def test_how_a_rating_is_known(spec: str, section: str, symbol: str, heading: str, state: State) -> None:
    rows = cells(spec, "calculation", section, by="Symbol")
    assert rows[symbol, heading].state is state


def test_why_a_quantity_has_no_value_stands_behind_it() -> None:
    cell = cells("cottage", "calculation", "inverters", by="Symbol")["In,string", "Result"]
    assert cell.state is NOTHING
    assert ENGLISH.say(cell.why) == "no standard rating lies between 15 A and 10.8 A"


def test_how_far_a_conduit_is_filled_is_worked_out() -> None:
    """Two conductors of 5 mm in 25 mm, given in the spec: what is printed of the way a cable is laid is computed."""
    made = checked(
        "ranch",
        ("site: {", "site: {conduits: {one: {inside_diameter: 25 mm}}, "),
        ("length: 12 m,", "length: 12 m, conduit: one, single_conductors: 2, outside_diameter: 5 mm,"),
    )
    table = schedules.cables(made.system, made.ratings)
    laid = [row[4] for row in table.rows if "conduit one" in ENGLISH.say(row[4].text)]
    assert [(cell.state, "8 % filled" in ENGLISH.say(cell.text)) for cell in laid] == [(COMPUTED, True)]
    assert [rating.value for rating in laid[0].ratings] == [pytest.approx(100 * 2 * 5**2 / 25**2)]


def test_numbers_of_the_data_side_stand_with_their_last_digits_below_each_other() -> None:
    """Common practice, no source. All other columns are of words, and begin below each other."""
    made = checked("workshop")
    columns = data_bus(made.system, made.ratings).columns
    numbers = [ENGLISH.say(column.heading) for column in columns if column.right]
    assert numbers == ["No.", "Address", "Cable from the one before", "Length"]
