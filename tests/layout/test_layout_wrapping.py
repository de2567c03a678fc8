"""Where lines beside a symbol are broken. Our own rule; widths are those of the font."""

from __future__ import annotations

import pytest

from sld.layout.diagram.diagram import Cell, Diagram, Join
from sld.layout.diagram.line import Line, Role
from sld.layout.diagram.wrapping import MANNERS, broken, lines_wrapped
from sld.symbols.typeface import text_width_mm
from sld.words import ENGLISH, verbatim

DIVISIBLE = "Über\u00adspannungs\u00adschutz"


def rows(text: str, width_mm: float, role: Role = Role.RATED) -> list[str]:
    return [str(line.said) for line in broken((Line(role, verbatim(text)),), width_mm, ENGLISH)]


@pytest.mark.parametrize(
    ("text", "room_for", "expected"),
    [
        ("WWWWWWWWWWWW", "WWWWW", ["WWWWW", "WWWWW", "WW"]),  # far too long: torn where the room ends, not before
        ("WWWWWW", "WWWWW", ["WWWWWW"]),  # a little too long: left whole
        ("aaa bbb", "aaa bbb", ["aaa bbb"]),
        ("aaa bbb", "aaa bb", ["aaa", "bbb"]),
        ("aaa bbb ccc", "aaa bbb", ["aaa bbb", "ccc"]),
        ("aaa  bbb", "aaa bbb ccc", ["aaa bbb"]),
        (DIVISIBLE, "Überspannungsschutz", ["Überspannungsschutz"]),
        (DIVISIBLE, "Überspannungs-", ["Überspannungs-", "schutz"]),
        (DIVISIBLE, "spannungs-", ["Über-", "spannungs-", "schutz"]),
    ],
)
def test_a_line_is_broken_where_the_room_ends(text: str, room_for: str, expected: list[str]) -> None:
    assert rows(text, text_width_mm(room_for)) == expected


@pytest.mark.parametrize("role", [Role.COUNT, Role.DESIGNATION])
def test_counts_and_designations_are_never_broken(role: Role) -> None:
    assert rows("-TB1-FC1 spare part of the second board", 10.0, role) == ["-TB1-FC1 spare part of the second board"]


@pytest.mark.parametrize(
    ("aligned", "unit", "most_count"),
    [("inverter", "kVA", 3), ("inverter", "kVA at one of the inputs", 6), ("", "kVA", 11)],
)
def test_an_inverter_that_spans_rows_has_three_lines(aligned: str, unit: str, most_count: int) -> None:
    """Six where three were too wide; another device that spans three rows has 3 and 4 for each of two further rows."""
    below = tuple(Line(Role.RATED, verbatim(f"{number} {unit}")) for number in range(11))
    rows_of_it = tuple(Cell(name, "terminal") for name in "abc")
    root = Cell("t1", "inverter_3ph", below=below, join=Join.SPAN, aligned=aligned, children=rows_of_it)
    assert len(lines_wrapped(Diagram(root), MANNERS[0]).root.below) == most_count


@pytest.mark.parametrize(
    ("strings", "told"), [((), True), (("existing",), False), (("existing", "existing"), False),
                          (("new",), True), (("existing", "new"), True)],
)  # fmt: skip
def test_a_cable_of_strings_has_its_status_where_they_do_not_say_the_same(strings: tuple[str, ...], told: bool) -> None:
    below = (Line(Role.RATED, verbatim("6 mm²")), Line(Role.STATUS, verbatim("existing")))
    ends = tuple(Cell(f"g{n}", "pv_string", aligned="string", status=status) for n, status in enumerate(strings))
    cable = Cell(
        "w", "cable_2", below=below, along=Line(Role.COMPUTED, verbatim("12 m")), status="existing", children=ends
    )
    made = lines_wrapped(Diagram(cable), MANNERS[0]).root.below
    assert ("existing" in " ".join(str(line.said) for line in made)) is told
