"""Junctions and symbols in the role of their conductors, by which a renderer colours them."""

from __future__ import annotations

import pytest

from sld.layout.diagram.diagram import LineKind
from sld.layout.plan import PlacedCell, Plan, Wire
from sld.sheet.place import place
from sld.sheet.sheet import Group
from sld.symbols.catalogue import family
from sld.symbols.stroke import Box, Circle, Polyline

LEVEL, UPRIGHT = ((0.0, 0.0), (20.0, 0.0)), ((0.0, 0.0), (0.0, 20.0))


def placed(wires: tuple[Wire, ...], cells: tuple[PlacedCell, ...] = (), dots: tuple[tuple[float, float], ...] = ()) \
        -> dict[str, Group]:  # fmt: skip
    plan = Plan(30.0, 30.0, cells, wires, dots, (), (), ())
    return {group.key: group for group in place(plan, family("IEC"), {}, (0.0, 0.0), {})}


def wire(points: tuple[tuple[float, float], ...], kind: LineKind) -> Wire:
    return Wire(kind, points, (("a", "feed"), ("b", "supply")))


@pytest.mark.parametrize("kind", LineKind)
@pytest.mark.parametrize(
    ("points", "at"), [(LEVEL, (7.0, 0.0)), (UPRIGHT, (0.0, 7.0)), (LEVEL[::-1], (7.0, 0.0)), (LEVEL, (20.0, 0.0))]
)
def test_a_junction_is_one_of_the_conductor_it_lies_on(
    points: tuple[tuple[float, float], ...], at: tuple[float, float], kind: LineKind
) -> None:
    """Also between its ends, and not of another one beside it."""
    other = wire(((0.0, 25.0), (25.0, 25.0)), LineKind.DATA if kind is LineKind.AC else LineKind.AC)
    made = placed((other, wire(points, kind)), dots=(at,))
    assert [key for key in made if key.startswith("junctions")] == [f"junctions-{kind.value}"]


def strokes_in_a_role(symbol: str, wires: tuple[Wire, ...]) -> tuple[set[str], int]:
    """The roles of a symbol's strokes, and how many of them have none. Its feed is at 0, 0."""
    cell = PlacedCell(
        "a", symbol, "new", (0.0, 0.0), (0.0, 0.0), Box(-9.0, -5.0, 0.0, 5.0), (("feed", (0.0, 0.0)),), ()
    )
    strokes = [each for each in placed(wires, (cell,))["a"].strokes if isinstance(each, Polyline | Circle)]
    return {each.role for each in strokes} - {""}, sum(not each.role for each in strokes)


@pytest.mark.parametrize(
    ("symbol", "in_a_role", "has_others"),
    [("switch_disconnector", True, True), ("cable_2", True, False), ("cable_5", True, False)],
)
def test_a_cable_is_in_the_role_of_its_conductor_and_of_a_switch_its_leads_alone(
    symbol: str, in_a_role: bool, has_others: bool
) -> None:
    roles, others_count = strokes_in_a_role(symbol, (wire(LEVEL, LineKind.DC),))
    assert (roles, others_count > 0) == ({"dc"} if in_a_role else set(), has_others)


@pytest.mark.parametrize("symbol", ["switch_disconnector", "cable_2"])
def test_a_symbol_without_a_power_conductor_has_no_role(symbol: str) -> None:
    assert not strokes_in_a_role(symbol, ())[0]


# the arm of a disconnector, from (2.5, 2.5) over (7.5, 0) to its terminal at (10, 0), is one stroke
@pytest.mark.parametrize(("kind", "width_mm"), [(LineKind.AC, 0.5), (LineKind.DC, 0.35)])
@pytest.mark.parametrize("end", [(10.0, 0.0), (10.004, 0.0)], ids=["there", "there but for rounding"])
def test_of_a_switch_the_stretch_at_the_terminal_is_drawn_as_its_conductor_and_its_arm_over_it(
    kind: LineKind, width_mm: float, end: tuple[float, float]
) -> None:
    cell = PlacedCell(
        "a", "disconnector", "new", (0.0, 0.0), (0.0, 0.0), Box(0.0, -5.0, 10.0, 5.0), (("supply", (10.0, 0.0)),), ()
    )
    made = placed((Wire(kind, (end, (20.0, 0.0)), (("a", "supply"), ("b", "feed"))),), (cell,))["a"].strokes
    arm = [each for each in made if isinstance(each, Polyline) and (7.5, 0.0) in each.points]
    assert [(each.points, each.width_mm, each.role) for each in arm] == [
        (((10.0, 0.0), (7.5, 0.0)), width_mm, kind.value),
        (((7.5, 0.0), (2.5, 2.5)), 0.35, ""),
    ]
