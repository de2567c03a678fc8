"""Flags and their texts, read off the finished sheets: none without the other, no sheet without a pointer to them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from example_specs import SPECS, document

from sld import run
from sld.sheet.compose import Composition
from sld.sheet.sheet import Sheet
from sld.symbols.stroke import Circle, Polyline, Text

LISTS = ("findings", "accepted")
_INVERTERS = "".join(
    f"  i{n}: {{type: I, inputs: [{{strings: [{{module: M, modules_in_series: {12 + n}}}]}}]}}\n" for n in range(6)
)
FIELD = """project: {title: Field}
site: {temperature_min: -10 °C, temperature_max: 35 °C}
supply: {phases: 3, earthing_system: TN-S, prospective_fault_current: 30 kA}
drawing: {paper: A4, largest_paper: A4, unfold: true}
boards:
  main: {rated_current: 400 A, circuit: [{kind: main_switch, rated_current: 250 A}]}
types:
  modules:
    M: {rated_power: 400 W, open_circuit_voltage: 37 V, short_circuit_current: 13 A, mpp_voltage: 31 V,
        mpp_current: 12 A, voltage_coefficient: -0.26 %/K}
  inverters:
    I: {rated_power: 10 kW, phases: 3, dc_voltage_max: 500 V, mpp_voltage_min: 200 V, mpp_voltage_max: 450 V,
        inputs: [{current_max: 10 A, short_circuit_current_max: 20 A, strings_max: 1}]}
inverters:
"""
FIELD += _INVERTERS
"""Generated: six inverters with too much voltage on papers so small that they stand on several sheets."""


def numbers(sheet: Sheet, layers: tuple[str, ...]) -> Iterator[str]:
    """Yield the numbers that stand in an outline, of flags or of lists."""
    for group in sheet.groups:
        if group.key.startswith("flag-") if "flag" in layers else group.section in LISTS:
            shapes = [stroke for stroke in group.strokes if isinstance(stroke, Circle | Polyline)]
            yield from (stroke.text for stroke in group.strokes if isinstance(stroke, Text)
                        and shapes and re.fullmatch("[0-9]+", stroke.text) and stroke.height_mm < 2.0)  # fmt: skip


def untold(made: Composition) -> list[tuple[int, str]]:
    """Return what is missing, by sheet: a text, a flag, or the pointer from the one to the other."""
    told = {number: sheet.number for sheet in made.sheets for number in numbers(sheet, ("table",))}
    shown = [(sheet, number) for sheet in made.sheets for number in numbers(sheet, ("flag",))]
    missing = [(sheet.number, number) for sheet, number in shown if number not in told]
    missing += [(told[number], number) for number in told.keys() - {number for _, number in shown}]
    for sheet, number in shown:
        words = " ".join(stroke.text for group in sheet.groups if group.key.startswith(("pointer", "title-block"))
                         for stroke in group.strokes if isinstance(stroke, Text))  # fmt: skip
        there = told.get(number, sheet.number)
        named = re.search(r"see sheets? ([0-9]+)(?: to ([0-9]+))?", words)
        if there != sheet.number and not (named and int(named[1]) <= there <= int(named[2] or named[1])):
            missing.append((sheet.number, number))
    return missing


@pytest.mark.parametrize("path", SPECS, ids=lambda path: path.stem)
def test_every_flag_has_its_text_and_every_text_its_flag(path: Path) -> None:
    assert untold(document(path, "drawing")) == []


def test_flags_of_a_plant_on_many_sheets_point_to_their_texts() -> None:
    made = run.draw(run.check_text(FIELD))
    assert len(made.diagrams) > 1
    assert [number for sheet in made.sheets[1:] for number in numbers(sheet, ("flag",))]
    assert untold(made) == []
