"""What a branch that is drawn once for several comes to: the numbers of the System, level by level.

Common practice, no source: equal branches stand once, with their number and with the sum of all.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from sld import layout, run
from sld.layout.diagram.branch import branch
from sld.layout.diagram.line import Role
from sld.ratings.symbol import Symbol
from sld.words import ENGLISH

SCHOOL = Path(__file__).parents[2] / "specs" / "valley-school.yaml"
SPEC = """project: {{title: Field}}
site: {{temperature_min: -10 °C, temperature_max: 32 °C}}
supply: {{phases: 3, voltage: 400 V, earthing_system: TN-S, prospective_fault_current: 10 kA, loop_impedance: 0.1 ohm}}
boards:
  main: {{}}
{boards}
inverters:
{inverters}
types:
  modules:
    M: {{rated_power: 410 W, open_circuit_voltage: 37.4 V, short_circuit_current: 13.9 A, mpp_voltage: 31.3 V,
        mpp_current: 13.1 A}}
  inverters:
    I: {{rated_power: 20 kW, apparent_power_max: 22 kVA, phases: 3, dc_voltage_max: 1000 V, mpp_voltage_min: 150 V,
        mpp_voltage_max: 850 V, inputs: [{{count: 6, current_max: 32 A, short_circuit_current_max: 48 A}}]}}
"""
BOARD = "  {name}: {{fed_from: main, circuit: [{{kind: breaker}}, {{kind: cable, length: {length_m} m}}]}}\n"
INVERTER = (
    "  {name}: {{type: I, connected_to: {board}, count: {count}, circuit: [{{kind: breaker}}, {cable}],"
    " inputs: [{inputs}]}}\n"
)
CABLE = "{kind: cable, length: 12 m}"
INPUT = "{strings: [{module: M, modules_in_series: 12, count: 2, cable: {length: 20 m}}]}"


def field(boards: int, blocks: int, count: int, inputs: int, cable: str = f"{CABLE}, {{kind: isolator}}") -> str:
    """Return a spec of boards (0: all at the main one), each with so many blocks of so many equal inverters."""
    names = [f"b{n}" for n in range(boards)] or ["main"]
    inverters = [
        INVERTER.format(name=f"i{n}", board=board, count=count, cable=cable, inputs=", ".join([INPUT] * inputs))
        for n, board in enumerate((board for board in names for _ in range(blocks)), 1)
    ]
    further = [BOARD.format(name=f"b{n}", length_m=30 + n) for n in range(boards)]
    return SPEC.format(boards="".join(further), inverters="".join(inverters))


def sums(found: run.Checked) -> Iterator[str]:
    """Yield the sums of a drawing that draws branches once whatever their lengths are, from the network on."""
    drawable = layout.Drawable(((layout.diagram_of(found.system, found.ratings, {}), found.system),))
    for diagram, _ in (drawable.shortened() or drawable).drawn:
        for cell in branch(diagram.root):
            yield from (ENGLISH.say(line.said) for line in cell.below if line.role is Role.SUM)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (field(0, 1, 4, 1), ["4 × (2 strings, 20 kW) = 8 strings, 80 kW"]),
        (field(0, 4, 1, 1), ["4 × (2 strings, 20 kW) = 8 strings, 80 kW"]),
        (field(0, 1, 60, 3), ["60 × (6 strings, 20 kW) = 360 strings, 1200 kW"]),
        (field(0, 1, 5, 1, "{kind: isolator}"), ["5 × (2 strings, 20 kW) = 10 strings, 100 kW"]),
        (
            field(0, 1, 7, 6),
            ["7 × (12 strings, 20 kW) = 84 strings, 140 kW", "6 × (2 strings, 9.84 kWp) = 12 strings, 59 kWp"],
        ),
        (
            field(4, 5, 1, 1),
            ["4 × (10 strings, 100 kW) = 40 strings, 400 kW", "5 × (2 strings, 20 kW) = 10 strings, 100 kW"],
        ),
        (SCHOOL.read_text(encoding="utf-8"), ["5 × (3 strings, 25 kW) = 15 strings, 125 kW"]),
    ],
    ids=["by count", "one by one", "60", "no cable", "inputs too", "boards", "school"],
)
def test_sums_of_what_is_drawn_once(text: str, said: list[str], tmp_path: Path) -> None:
    """Of the school by its title: 3 strings of 25 kW five times; of the others 12 modules of 410 W are 4.92 kWp."""
    path = SCHOOL if text.startswith("#") else tmp_path / "field.yaml"
    if path is not SCHOOL:
        path.write_text(text, encoding="utf-8")
    found = run.check(path)
    assert list(sums(found)) == said
    strings, power_w = (found.ratings["", symbol].value for symbol in (Symbol.NSTRINGS, Symbol.PAC))
    assert said[0].endswith(f"= {strings:.0f} strings, {power_w / 1000:g} kW")


def test_a_branch_without_strings_and_inverters_has_no_sum(tmp_path: Path) -> None:
    path = tmp_path / "field.yaml"
    load = "{circuit: [{kind: breaker}], power: 2 kW}"
    loads = ", ".join(f"pump {n}: {load}" for n in range(1, 5))
    path.write_text(f"{field(0, 1, 1, 1)}loads: {{{loads}}}\n", encoding="utf-8")
    found = run.check(path)
    diagram = layout.diagram_of(found.system, found.ratings, {})
    assert any(line.role is Role.COUNT for cell in branch(diagram.root) for line in cell.above)
    assert list(sums(found)) == []
