"""Diagrams written by hand: the usual case in full, to be looked at and measured."""

from __future__ import annotations

from dataclasses import replace

from lettering import above, drawn

from sld.layout.diagram.diagram import BusChain, BusStep, Cell, Diagram, EarthBar, EarthTap, Enclosure, Join, LineKind
from sld.words import verbatim


def row(*cells: Cell) -> Cell:
    """The cells one behind the other, the first one towards the network."""
    end = cells[-1]
    for cell in reversed(cells[:-1]):
        end = replace(cell, children=(end,))
    return end


def dc_input(number: int) -> Cell:
    n = str(number)
    cells = (
        drawn(f"in{n}", "terminal", (f"DC {n}",)),
        drawn(f"spd{n}", "surge_protection_2", (f"-F1{n}",), ("T2 DC", "Uc 1000 V", "Up 3.8 kV"), earth="6 mm² Cu"),
        drawn(
            f"q{n}", "switch_disconnector", (f"-Q1{n}",), ("1000 V 32 A", "DC-PV2"), flags=(3,) if number == 1 else ()
        ),
        drawn(f"w{n}", "cable_2", (f"-W1{n}",), ("H1Z2Z2-K", "2×1×6 mm²", "25 m, 0.61 %")),
        drawn(f"qr{n}", "switch_disconnector", (f"-Q3{n}",), ("1000 V 32 A",)),
        drawn(f"pv{n}", "pv_string", (f"-G1{n}",), ("12 × 430 W", "Uoc 512 V", "Isc 14.1 A"), aligned="string"),
    )
    return row(*(replace(cell, kind=LineKind.DC) for cell in cells))


def one_inverter() -> Diagram:
    """One inverter with two inputs: fourteen devices from the network to a string."""
    inverter = drawn(
        "t1", "inverter_3ph", ("-T1", "10 kW 3~"), ("200-800 V", "cos φ 0.9"), aligned="inverter", join=Join.SPAN,
        earth="16 mm²", children=(dc_input(1), dc_input(2)),
    )  # fmt: skip
    way = row(
        drawn("f1", "circuit_breaker", ("-F1",), ("C20 4P", "10 kA"), enclosure="db"),
        drawn("rcd", "rcd", ("-F2",), ("40 A 30 mA", "type B"), enclosure="db"),
        drawn("wac", "cable_5", ("-W2",), ("5G6 mm² Cu", "15 m, 0.4 %")),
        drawn("qi", "switch_disconnector", ("-Q2",), ("4P 32 A",)),
        inverter,
    )
    root = row(
        drawn("net", "network", ("Network", "400/230 V"), ("Ik 6 kA",)),
        drawn("m", "meter_bidirectional", ("-P1",), ("import/export",)),
        drawn("qs", "switch_disconnector", ("-Q0",), ("4P 63 A",), flags=(1, 2), enclosure="db"),
        drawn("bar", "busbar", ("-W0 63 A",), enclosure="db", join=Join.SPAN, children=(way,)),
    )
    return Diagram(
        root,
        (Enclosure("db", verbatim("-U1 Main distribution board")),),
        (drawn("log", "logger", ("-K1",), ("Logger",)),),
        (BusChain("bus", verbatim("-WF1 RS-485"), (
            BusStep("m", "-P1", 1), BusStep("t1", "-T1", 3), BusStep("log", "-K1", terminated=True))),),
        EarthBar("met", above("-XE1", "Main earthing terminal"), (
            EarthTap("WE1", above("-WE1", "16 mm² Cu", "earth electrode"), "earth_electrode"),
            EarthTap("WE2", above("-WE2", "10 mm²", "-U1 PE"), flags=(4,)),
        )),
    )  # fmt: skip


def inverters_on_one_bus(count: int) -> Diagram:
    """Equal inverters on one busbar, wired by a data cable in the order of their rows."""
    ways = tuple(
        row(
            drawn(f"f{i}", "circuit_breaker"),
            drawn(f"t{i}", "inverter_3ph", aligned="inverter", join=Join.SPAN, children=(
                drawn(f"s{i}a", "pv_string"), drawn(f"s{i}b", "pv_string"))),
        )
        for i in range(count)
    )  # fmt: skip
    root = drawn("net", "network", children=(drawn("bar", "busbar", join=Join.SPAN, children=ways),))
    return Diagram(root, chains=(BusChain("bus", steps=tuple(BusStep(f"t{i}") for i in range(count))),))
