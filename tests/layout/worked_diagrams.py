"""Diagrams written by hand: the usual case in full, to be looked at and measured."""

from __future__ import annotations

from dataclasses import replace

from sld.layout.diagram.diagram import BusChain, BusStep, Cell, Diagram, EarthBar, EarthTap, Enclosure, Join, LineKind


def row(*cells: Cell) -> Cell:
    """The cells one behind the other, the first one towards the network."""
    end = cells[-1]
    for cell in reversed(cells[:-1]):
        end = replace(cell, children=(end,))
    return end


def dc_input(number: int) -> Cell:
    n = str(number)
    cells = (
        Cell(f"in{n}", "terminal", (f"DC {n}",)),
        Cell(f"spd{n}", "surge_protection_2", (f"-F1{n}",), ("T2 DC", "Uc 1000 V", "Up 3.8 kV"), earth="6 mm² Cu"),
        Cell(
            f"q{n}", "switch_disconnector", (f"-Q1{n}",), ("1000 V 32 A", "DC-PV2"), flags=(3,) if number == 1 else ()
        ),
        Cell(f"w{n}", "cable_2", (f"-W1{n}",), ("H1Z2Z2-K", "2×1×6 mm²", "25 m, 0.61 %")),
        Cell(f"qr{n}", "switch_disconnector", (f"-Q3{n}",), ("1000 V 32 A",)),
        Cell(f"pv{n}", "pv_string", (f"-G1{n}",), ("12 × 430 W", "Uoc 512 V", "Isc 14.1 A"), aligned="string"),
    )
    return row(*(replace(cell, kind=LineKind.DC) for cell in cells))


def one_inverter() -> Diagram:
    """One inverter with two inputs: fourteen devices from the network to a string."""
    inverter = Cell(
        "t1", "inverter_3ph", ("-T1", "10 kW 3~"), ("200-800 V", "cos φ 0.9"), aligned="inverter", join=Join.SPAN,
        earth="16 mm²", children=(dc_input(1), dc_input(2)),
    )  # fmt: skip
    way = row(
        Cell("f1", "circuit_breaker", ("-F1",), ("C20 4P", "10 kA"), enclosure="db"),
        Cell("rcd", "rcd", ("-F2",), ("40 A 30 mA", "type B"), enclosure="db"),
        Cell("wac", "cable_5", ("-W2",), ("5G6 mm² Cu", "15 m, 0.4 %")),
        Cell("qi", "switch_disconnector", ("-Q2",), ("4P 32 A",)),
        inverter,
    )
    root = row(
        Cell("net", "network", ("Network", "400/230 V"), ("Ik 6 kA",)),
        Cell("m", "meter_bidirectional", ("-P1",), ("import/export",)),
        Cell("qs", "switch_disconnector", ("-Q0",), ("4P 63 A",), flags=(1, 2), enclosure="db"),
        Cell("bar", "busbar", ("-W0 63 A",), enclosure="db", join=Join.SPAN, children=(way,)),
    )
    return Diagram(
        root,
        (Enclosure("db", "-U1 Main distribution board"),),
        (Cell("log", "logger", ("-K1",), ("Logger",)),),
        (BusChain("bus", "-WF1 RS-485", (
            BusStep("m", "adr. 1"), BusStep("t1", "adr. 3"), BusStep("log", "120 Ω"))),),
        EarthBar("met", ("-XE1", "Main earthing terminal"), (
            EarthTap("WE1", ("-WE1", "16 mm² Cu", "earth electrode"), "earth_electrode"),
            EarthTap("WE2", ("-WE2", "10 mm²", "-U1 PE"), flags=(4,)),
        )),
    )  # fmt: skip


def inverters_on_one_bus(count: int) -> Diagram:
    """Equal inverters on one busbar, wired by a data cable in the order of their rows."""
    ways = tuple(
        row(
            Cell(f"f{i}", "circuit_breaker"),
            Cell(f"t{i}", "inverter_3ph", aligned="inverter", join=Join.SPAN, children=(
                Cell(f"s{i}a", "pv_string"), Cell(f"s{i}b", "pv_string"))),
        )
        for i in range(count)
    )  # fmt: skip
    root = Cell("net", "network", children=(Cell("bar", "busbar", join=Join.SPAN, children=ways),))
    return Diagram(root, chains=(BusChain("bus", "", tuple(BusStep(f"t{i}") for i in range(count))),))
