"""Diagrams for property tests: plausible systems, and wild trees with enclosures and alignments anywhere."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import strategies as st
from lettering import above, below, drawn

from sld.layout.diagram.diagram import BusChain, BusStep, Cell, Diagram, EarthBar, EarthTap, Enclosure, Join, LineKind
from sld.words import verbatim

DC = LineKind.DC
LINES = st.lists(
    st.sampled_from(["C20 4P", "10 kA", "5G6 mm² Cu", "15 m, 0.4 %", "Uoc 512 V", "H1Z2Z2-K 6"]), max_size=3
)
FLAGS = st.lists(st.integers(1, 40), max_size=5, unique=True)
EARTH = st.sampled_from(["", "", "6 mm²", "PE 16 mm² Cu"])
ONE_LINE = ["circuit_breaker", "rcd", "switch_disconnector", "cable_5", "fuse", "transformer", "surge_protection_2",
            "meter_ct", "meter", "terminal", "contactor"]  # fmt: skip


@st.composite
def _labelled(draw: st.DrawFn, cell: Cell) -> Cell:
    name = draw(st.sampled_from(["-Q1", "-F12.3", "-WD1004 spare"]))
    flags = tuple(draw(FLAGS)) if draw(st.booleans()) else ()
    return replace(cell, above=above(name, *draw(LINES)[:1]), below=below(*draw(LINES)), flags=flags)


@st.composite
def _line(draw: st.DrawFn, key: str, symbols: list[str], end: tuple[Cell, ...], **fields: object) -> Cell:
    """Cells one behind the other, the first one towards the network."""
    children = end
    for number in range(len(symbols), 0, -1):
        cell = drawn(f"{key}.{number}", symbols[number - 1], children=children, **fields)  # type: ignore[arg-type]
        children = (draw(_labelled(cell)),)
    return children[0]


@st.composite
def inverters(draw: st.DrawFn, key: str) -> Cell:
    inputs = []
    box = f"{key}.junction" if draw(st.booleans()) else ""
    for number in range(1, draw(st.integers(1, 4)) + 1):
        strings = tuple(
            draw(
                _line(
                    f"{key}.{number}.s{i}", ["fuse", "pv_string"] if draw(st.booleans()) else ["pv_string"], (), kind=DC
                )
            )
            for i in range(draw(st.integers(1, 4)))
        )
        parts = draw(st.sampled_from([["terminal"], ["terminal", "switch_disconnector"],
                                      ["surge_protection_2", "switch_disconnector", "terminal"]]))  # fmt: skip
        boxed = draw(_line(f"{key}.{number}.b", parts, strings, kind=DC, enclosure=box, earth=draw(EARTH)))
        inputs.append(draw(_line(f"{key}.{number}.c", ["cable_2"], (boxed,), kind=DC)))
    cell = drawn(
        key, draw(st.sampled_from(["inverter_3ph", "inverter_1ph"])), aligned="inverter", join=Join.SPAN,
        earth=draw(EARTH), children=tuple(inputs),
    )  # fmt: skip
    return draw(_labelled(cell))


@st.composite
def boards(draw: st.DrawFn, key: str, loads: list[Cell], depth: int = 2) -> Cell:
    """A board with its main switch, busbar and ways; some of the loads behind further boards."""
    ways = []
    remaining = list(loads)
    number = 0
    while remaining:
        number += 1
        if depth and len(remaining) > 1 and draw(st.booleans()):
            count = draw(st.integers(1, len(remaining)))
            load = draw(boards(f"{key}.{number}u", remaining[:count], depth - 1))
            remaining = remaining[count:]
        else:
            load = remaining.pop(0)
        load = draw(_line(f"{key}.{number}w", ["cable_5"], (load,))) if draw(st.booleans()) else load
        parts = draw(st.sampled_from([["circuit_breaker"], ["circuit_breaker", "rcd"], ["fuse"]]))
        ways.append(draw(_line(f"{key}.{number}f", parts, (load,), enclosure=key)))
    bar = drawn(f"{key}.bar", "busbar", join=Join.SPAN, enclosure=key, children=tuple(ways), earth=draw(EARTH))
    parts = draw(st.sampled_from([["switch_disconnector"], ["meter", "switch_disconnector"], ["surge_protection_1"]]))
    return draw(_line(f"{key}.main", parts, (draw(_labelled(bar)),), enclosure=key))


@st.composite
def earth_bars(draw: st.DrawFn) -> EarthBar | None:
    if not draw(st.booleans()):
        return None
    taps = tuple(
        EarthTap(
            draw(st.sampled_from(["WE1", "WE2", f"WE{i + 10}"])),
            above("-WE1", *draw(LINES)),
            draw(st.sampled_from(["", "earth_electrode", "lightning_protection"])),
            tuple(draw(FLAGS)[:2]),
        )
        for i in range(draw(st.integers(0, 14)))
    )
    return EarthBar("met", above("-XE1", "Main earthing terminal"), taps, tuple(draw(FLAGS)[:1]))


def _enclosures(root: Cell) -> tuple[Enclosure, ...]:
    names: dict[str, None] = {}
    waiting = [root]
    while waiting:
        cell = waiting.pop()
        if cell.enclosure:
            names[cell.enclosure] = None
        waiting.extend(cell.children)
    return tuple(
        Enclosure(name, verbatim(f"-U1 {'Distribution board' if len(name) < 9 else 'Box'} {name}")) for name in names
    )


@st.composite
def systems(draw: st.DrawFn) -> Diagram:
    count = draw(st.integers(1, 12) if draw(st.booleans()) else st.integers(1, 3))
    keys = [f"t{i}" for i in range(count)]
    loads = [draw(inverters(key)) for key in keys]
    for number in range(draw(st.integers(0, 2))):
        loads.insert(draw(st.integers(0, len(loads))), draw(_line(f"l{number}", ["load"], ())))
    inner = draw(boards("u", loads)) if len(loads) > 1 or draw(st.booleans()) else loads[0]
    root = draw(_line("n", ["network", "meter_bidirectional"], (inner,)))
    free = tuple(
        draw(_line(f"k{i}", [name], ())) for i, name in enumerate(["logger", "router"][: draw(st.integers(0, 2))])
    )
    order = draw(st.permutations(keys)) if draw(st.booleans()) else keys
    steps = [*(["n.2"] if draw(st.booleans()) else []), *order, *(["k0.1"] if free else [])]
    chains = [
        BusChain(
            "bus",
            verbatim("-WF1 RS-485"),
            tuple(BusStep(key, f"-N{i}", i, draw(st.booleans())) for i, key in enumerate(steps)),
        )
    ]
    if len(free) == 2:
        chains.append(BusChain("net", verbatim("-WG1 Ethernet"), (BusStep("k0.1"), BusStep("k1.1"))))
    if draw(st.booleans()):
        chains = []
    return Diagram(root, _enclosures(root), free, tuple(chains), draw(earth_bars()))


@st.composite
def wild(draw: st.DrawFn) -> Diagram:
    """Trees with any symbol, enclosure and alignment at any place: demands that cannot all be met among them."""
    keys: list[str] = []
    chained: list[str] = []

    def cell(depth: int) -> Cell:
        key = f"c{len(keys)}"
        keys.append(key)
        count = draw(st.integers(0, 3)) if depth else 0
        children = tuple(cell(depth - 1) for _ in range(count))
        spans = bool(children) and draw(st.booleans())
        symbol = draw(st.sampled_from(["busbar", "inverter_3ph"] if spans else ONE_LINE))
        if symbol != "busbar":  # which has no place for a data cable
            chained.append(key)
        made = drawn(
            key, symbol, enclosure=draw(st.sampled_from(["", "", "a", "b"])), children=children, earth=draw(EARTH),
            aligned=draw(st.sampled_from(["", "", "", "x", "y", "inverter"])), join=Join.SPAN if spans else Join.TRUNK,
        )  # fmt: skip
        return draw(_labelled(made))

    root = cell(5)
    steps = draw(st.lists(st.sampled_from(chained), max_size=4, unique=True)) if chained else []
    chain = BusChain(
        "bus", verbatim("-WF1 RS-485"), tuple(BusStep(key, "-N1", 1, draw(st.booleans())) for key in steps)
    )
    return Diagram(root, _enclosures(root), (), (chain,), draw(earth_bars()))
