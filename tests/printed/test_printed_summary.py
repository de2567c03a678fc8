"""The summary, the table for review, and the tables for each reader. Worked by hand as in the labels."""

from __future__ import annotations

import pytest
from printed_sheet import drawing

# Leakage: 50 nF/kWp · 11.78 kWp · 2π · 50 Hz · 230 V = 42.6 mA. Rise: 0.766 % + 0.808 % to -TB2.
# Export of the most loaded line: 14 A + 16 A + 7.22 A. Apparent power: 11 + 3 + 5 kVA
# Of inputs, cables and breaking devices the one nearest to its limit: 9 · 44 V of 600 V before 10 · 44 V of 900 V.
SUMMARY = [
    ("workshop", "Firth F310", "47 modules"),
    ("workshop", "Strings, DC power at STC", "5, 14.57 kWp"),
    ("workshop", "Highest Uoc at -15 °C", "440 V ≤ 900 V"),
    ("workshop", "DC voltage -TB2-XD1", "Uoc 396 V ≤ 600 V"),
    ("workshop", "Input current -TB2-XD1", "Isc 13.4 A ≤ 20 A"),
    ("workshop", "DC cable -TB1-WD2…4", "16 A ≤ Iz 36.7 A"),
    ("workshop", "DC isolators", "-TB2-QB1, -TB1-QB2…4, -TB1-FC5"),
    ("workshop", "DC switches in inverters", "-TB1; switch room"),
    ("workshop", "Insulation test; before start", "500 V, ≥ 1 MΩ; ≥ 30 kΩ"),
    ("workshop", "Array leakage, monitor", "42.6 mA ≤ 300 mA"),
    ("workshop", "Orrin S3", "1 inverter"),
    ("workshop", "Orrin S10", "1 inverter"),
    ("workshop", "AC power; apparent power with battery converters", "13 kW, 19 kVA"),
    ("workshop", "Batteries, usable energy and converters", "8 kWh, 5 kVA"),
    ("workshop", "AC isolators", "-TB1-QB1"),
    ("workshop", "Main switches", "-UC1-QB1; switch room"),
    ("workshop", "AC cable -UC2-WD1", "50 A > Iz 49.6 A"),
    ("workshop", "Export current a line", "37.2 A"),
    ("workshop", "Highest rise to an inverter", "1.57 %, target 1 %"),
    ("workshop", "Fault current -GB1-FC1", "Ik 8 kA ≤ 10 kA"),
    ("workshop", "Fault current, loop of the supply", "8 kA, 0.2 Ω"),
    ("workshop", "Earthing system", "TN-S, RA 12 Ω"),
    ("workshop", "Meter -UC1-PG1", "No. 77 31, yard (outdoors)"),
    ("workshop", "Meter -UC1-PG2", "switch room"),
    ("workshop", "Feed-in limit", "25 kW"),
    ("workshop", "Communication", "-WF1 Modbus RTU, Ethernet, wireless"),
    # 24 + 6 of the store, 2 of the gate; one more only planned
    ("cottage", "Firth F310", "32 modules"),
    ("cottage", "Firth F310, future", "1 module"),
    ("cottage", "Strings, DC power at STC, without future", "5, 9.92 kWp"),
    ("cottage", "DC and AC power, existing", "9.3 kWp, 3 kW"),
    ("cottage", "DC and AC power, new", "0.62 kWp, 0.6 kW"),
    ("cottage", "DC and AC power, future", "0.31 kWp, 0.3 kW"),
    ("cottage", "Highest Uoc at -15 °C, without future", "528 V > 500 V"),  # 12 · 44 V
    # 3 kW and twice 300 W at 230 V; the planned 300 W raise the voltage, so the rise is told with them
    ("cottage", "Export current a line, without future", "15.7 A"),
    (
        "cottage",
        "Insulation test; before start, without future",
        "1000 V, ≥ 1 MΩ; 500 V, ≥ 1 MΩ; 250 V, ≥ 0.5 MΩ; ≥ 30 kΩ",
    ),  # 600, 300, 50 V
    ("cottage", "Device in the functional earth", "≤ 1 A"),
    ("cottage", "Nib one", "2 inverters"),
    ("cottage", "Nib three, future", "1 inverter"),
    ("cottage", "AC power, apparent power, without future", "3.6 kW, 3.6 kVA"),
    ("cottage", "Batteries, usable energy", "6 kWh"),
    ("cottage", "Feed-in limit", "none stated"),
    ("cottage", "Communication", "none"),
    ("cottage", "Fault current, loop of the supply", "6 kA, 21 Ω assumed"),  # TT (common practice in Great Britain)
    ("yard", "Firth F310", "82 modules"),
    ("yard", "Strings, DC power at STC", "6, 25.42 kWp"),
    ("yard", "AC power, apparent power", "250.9 kW, 250.9 kVA"),
    ("yard", "Highest rise to an inverter", "1.81 % ≤ 3 %"),
    ("yard", "Main switches", "none stated"),
    ("yard", "Meter -UC1-PG1", "–"),
    ("ranch", "Feed-in limit", "0.8 kW"),
    ("ranch", "Export current a line", "32 A"),
]


@pytest.mark.parametrize(("spec", "quantity", "value"), SUMMARY)
def test_summary(spec: str, quantity: str, value: str) -> None:
    assert drawing(spec).pairs("Summary").get(quantity) == value


def test_the_summary_is_silent_on_what_is_not_there() -> None:
    quantities = set(drawing("ranch").pairs("Summary"))
    assert not [each for each in quantities if "batter" in each or "future" in each or "functional" in each]


REVIEW = [
    ("workshop", "Supply point", "-GA1", "LM 5501", "4 Weir Lane, Lowmere"),
    ("workshop", "Network operator", "-GA1", "Lowmere network", "–"),
    ("workshop", "Highest apparent power", "–", "19 kVA", "–"),
    ("workshop", "Feed-in limit", "–", "25 kW", "–"),
    ("workshop", "Meter", "-UC1-PG1", "supply meter, CT 100/5 A, No. 77 31", "yard (outdoors)"),
    ("workshop", "Meter", "-UC1-PG2", "feed-in limit, 80 A direct", "switch room"),
    ("workshop", "Meter", "-TB1-PG1", "generation meter, 60 A direct", "switch room"),
    ("workshop", "Interface protection", "-TB1-BU1", "40 A 4P, Lowmere table 3", "switch room"),
    ("workshop", "Main switch", "-UC1-QB1", "100 A 3P", "switch room"),
    ("workshop", "Isolator", "-TB1-QB1", "32 A 4P, not lockable", "–"),
    ("workshop", "Inverter settings", "-TB2", "network setting not given, cos φ 1", "yard (outdoors)"),
    ("workshop", "Inverter settings", "-TB1", "network setting Lowmere 7, cos φ 0.95, limited to 9 kW", "switch room"),
    ("cottage", "Supply point", "-GA1", "number not given", "–"),
    ("cottage", "Network operator", "-GA1", "not given", "–"),
    ("cottage", "Highest apparent power, without future", "–", "3.6 kVA", "–"),
    ("cottage", "Feed-in limit", "–", "none stated", "–"),
    ("cottage", "Meter", "-UC1-PG1", "supply meter, 80 A direct", "hall"),
    ("cottage", "Meter", "-TB1-PG1", "generation meter, CT 60/1 A", "hall"),
    ("cottage", "Main switch", "-UC1-QB1", "63 A 2P", "hall"),
    ("cottage", "Isolator", "-TB1-QB1", "25 A 2P, lockable: not stated", "–"),
    (
        "cottage",
        "Inverter settings",
        "-TB2…4",
        "network setting not given, cos φ 1, interface protection built in",
        "–",
    ),
    (
        "cottage",
        "Inverter settings",
        "-TB1",
        "network setting not given, cos φ 1, interface protection built in",
        "hall",
    ),
]


OF_DEVICES = {"AC isolators", "Main switches", "Feed-in limit"}
"""Of these and of meters the review tells by itself."""


@pytest.mark.parametrize(("spec", "what", "designation", "told", "place"), REVIEW)
def test_review(spec: str, what: str, designation: str, told: str, place: str) -> None:
    """The designation stands behind what is asked for, the place behind what is told."""
    row = [", ".join(each for each in pair if each != "–") for pair in ((what, designation), (told, place))]
    assert drawing(spec, "operator").pairs("For review")[row[0]] == row[1]


@pytest.mark.parametrize("spec", ["workshop", "cottage"])
def test_the_review_has_the_quantities_of_the_summary_behind_the_devices(spec: str) -> None:
    told, of_summary = drawing(spec, "operator").pairs("For review"), drawing(spec).pairs("Summary")
    of_devices = {what if name == "–" else f"{what}, {name}" for of, what, name, *_ in REVIEW if of == spec}
    left_out = {name for name in of_summary if name in OF_DEVICES or name.startswith("Meter ")}
    assert of_devices <= set(told)
    assert {k: v for k, v in told.items() if k not in of_devices} == {
        k: v for k, v in of_summary.items() if k not in left_out
    }


def test_readers_have_their_tables() -> None:
    """The operator's has the review and nothing of the wiring, the crew's all schedules."""
    full, operator, crew = (set(drawing("workshop", reader).titles()) for reader in ("", "operator", "crew"))
    wiring = {"Insulation test of the DC side", "Terminals and routes", "Data bus and links"}
    schedules = {"String schedule", "Cable schedule", "Equipment schedule", "Earthing conductors"}
    assert full - operator == {*wiring, *schedules, "Summary"}
    assert operator - full == {"For review"}
    assert full == crew


def test_review_says_that_settings_are_not_given() -> None:
    rows = drawing("workshop", "operator", (", settings: Lowmere table 3", "")).pairs("For review")
    assert rows["Interface protection, -TB1-BU1"] == "40 A 4P, settings not given, switch room"


def test_the_summary_reads_down_from_the_array_to_the_supply() -> None:
    """Two quantities a row, each with its value; first all of the left half."""
    heads, rows = drawing("workshop").table("Summary")
    assert heads == ["Quantity", "Value, limit, place"] * 2
    quantities = [name for place in (0, 2) for row in rows if (name := row[place])]
    in_order = [quantity for spec, quantity, _ in SUMMARY if spec == "workshop"]
    assert [each for each in quantities if each != "Meter -TB1-PG1"] == in_order


def test_what_is_there_and_what_is_planned_stands_between_the_powers_and_the_voltages() -> None:
    quantities = list(drawing("cottage").pairs("Summary"))
    in_order = ["Firth F310", "DC and AC power, existing", "DC and AC power, new", "DC and AC power, future",
                "Highest Uoc at -15 °C, without future"]  # fmt: skip
    assert sorted(in_order, key=quantities.index) == in_order


def test_a_small_limit_of_feed_in_is_told_to_the_operator_in_kilowatts() -> None:
    """800 W."""
    assert drawing("ranch", "operator").pairs("For review")["Feed-in limit"] == "0.8 kW"
