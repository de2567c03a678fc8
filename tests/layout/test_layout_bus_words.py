"""What is written beside the devices of a data chain. Common practice, no source."""

from __future__ import annotations

from pathlib import Path

import pytest

from sld import run
from sld.layout.diagram.bus_words import bus_lines
from sld.layout.diagram.diagram import BusChain, BusStep
from sld.symbols.stroke import Polyline, Text
from sld.words import verbatim

Setting = tuple[int | None, bool]
"""Address, terminated."""


def beside(*settings: Setting) -> str:
    """What stands beside devices that are drawn once, which have these settings."""
    alike = tuple(BusStep(f"t{n}", f"-TB{n}", *each) for n, each in enumerate(settings, 1))
    ((key, line),) = bus_lines(BusChain("bus", steps=(BusStep("t1", "-TB1", alike=alike),)))
    assert key == "t1"
    return str(line.said)


@pytest.mark.parametrize(
    ("settings", "expected"),
    [
        (((4, False),), "addr. 4"),
        (((4, True),), "addr. 4"),  # the resistor of one device is drawn beside the bus
        ([(n, False) for n in (9, 3, 7, 1, 8, 2)], "addr. 9, 3, 7, 1, 8, 2"),
        ([(n, False) for n in (9, 3, 7, 1, 8, 2, 5)], "addr. see schedule"),
        ([(n, False) for n in range(11, 31)], "addr. 11…30"),
        (((4, False), (None, False), (6, False)), "addr. 4 at -TB1, addr. 6 at -TB3"),
        (((4, False), (None, False), (6, False), (8, False)), "addr. see schedule"),
        (((None, True), (None, False), (None, True)), "120 Ω at -TB1, 120 Ω at -TB3"),
        (((None, True), (None, False), (None, True), (None, True)), "120 Ω at 3 of 4"),
    ],
)
def test_settings_of_equal_devices(settings: list[Setting], expected: str) -> None:
    assert beside(*settings) == expected


def test_the_designation_of_the_chain_stands_at_its_first_device_alone() -> None:
    steps = (BusStep("k", "-KF1"), BusStep("t1", "-TB1", 4), BusStep("t2", "-TB2", 5))
    chain = BusChain("bus", verbatim("-WF1"), steps)
    assert [(key, str(line.said)) for key, line in bus_lines(chain)] == [
        ("k", "-WF1"), ("t1", "addr. 4"), ("t2", "addr. 5"),
    ]  # fmt: skip
    silent = BusChain("bus", verbatim("-WF1"), steps, settings_told=False)
    assert [(key, str(line.said)) for key, line in bus_lines(silent)] == [("k", "-WF1")]


def test_the_name_of_a_chain_stands_at_its_line() -> None:
    """At the height of the branch to the logger where it is one of few, on its left."""
    school = run.draw(run.check(Path(__file__).parents[2] / "specs" / "valley-school.yaml"))
    groups = school.sheets[0].groups
    wires = [stroke for group in groups if group.layer == "data" for stroke in group.strokes]
    branches = [wire.points for wire in wires if isinstance(wire, Polyline)]
    texts = [
        stroke for group in groups if group.layer == "label" for stroke in group.strokes if isinstance(stroke, Text)
    ]
    for name in ("-WF1 RS-485 Modbus RTU", "Ethernet"):
        (at,) = [text.at for text in texts if text.text == name]
        assert any(abs(y + 1.25 - at[1]) < 0.01 and x > at[0] for points in branches for x, y in points)
