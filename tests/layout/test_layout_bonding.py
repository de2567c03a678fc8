"""The conductor that bonds several frames: drawn once, to the terminal of the bar, or to one sign of earth.

IEC 61082-1: what is connected is drawn as connected, once (from memory).
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from lettering import above, drawn
from plan_check import defects
from plan_reader import read_nets

from sld.layout.diagram.diagram import Cell, Diagram, EarthBar, EarthTap, Join
from sld.layout.passes.arrange import arrange
from sld.symbols import catalogue


def field(*earths: str) -> Cell:
    """Arrays at one busbar, each with a conductor to earth of this name."""
    arrays = tuple(drawn(f"array{number}", "pv_string", earth=earth) for number, earth in enumerate(earths, 1))
    return Cell("bar", "busbar", join=Join.SPAN, children=arrays)


TAPS = (
    EarthTap("-WE1", above("-WE1", "16 mm²"), "earth_electrode"),
    EarthTap("-WE2", above("-WE2", "6 mm²"), "equipotential_bonding"),
)
BAR = EarthBar("met", above("-XE1", "Main earthing terminal"), TAPS)
ALONE = Diagram(field("-WE2", "-WE2", "-WE2"))
AT_BAR = replace(ALONE, earth=BAR)


def bonded(diagram: Diagram) -> list[frozenset[str]]:
    """The cells that are joined by their pin `earth`, with what else is on the conductor."""
    nets = read_nets(arrange(diagram, catalogue))
    return sorted(
        (frozenset(key for key, _ in net) for net in nets if any(name == "earth" for _, name in net)), key=sorted
    )


@pytest.mark.parametrize("diagram", [ALONE, AT_BAR], ids=["sign", "bar"])
def test_a_bonded_field_has_no_defect(diagram: Diagram) -> None:
    assert defects(arrange(diagram, catalogue), diagram) == []


def test_the_conductor_is_led_down_a_module_beside_the_devices() -> None:
    """One module of 2.5 mm from the edge of the diagram, and one more to the devices: no room is left unused."""
    plan = arrange(ALONE, catalogue)
    assert min(x for wire in plan.wires for x, _ in wire.points) == 2.5
    assert {cell.box.left_mm for cell in plan.cells if cell.symbol == "pv_string"} == {5.0}


def test_without_a_bar_the_conductor_ends_at_one_sign_of_earth() -> None:
    (net,) = bonded(ALONE)
    assert {"array1", "array2", "array3"} < net
    assert len([key for key in net if key.endswith("/earth")]) == 1
    assert len([cell for cell in arrange(ALONE, catalogue).cells if cell.key.endswith("/earth")]) == 1


def test_with_a_bar_the_conductor_is_the_terminal_of_its_name() -> None:
    plan = arrange(AT_BAR, catalogue)
    (net,) = bonded(AT_BAR)
    assert {"array1", "array2", "array3", "met"} <= net
    assert not [cell.key for cell in plan.cells if cell.key.endswith("/earth")]
    symbols = {cell.key: cell.symbol for cell in plan.cells if cell.key.startswith("met/")}
    assert len(symbols) == 2
    # the conductor itself comes: its terminal has no sign for something further on
    assert sorted(bool(symbol) for key, symbol in symbols.items()) == [False, True]


def test_conductors_of_two_names_are_not_one() -> None:
    assert len(bonded(Diagram(field("-WE1", "-WE2")))) == 2
