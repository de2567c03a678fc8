"""Where lines beside a symbol are broken. Our own rule; widths are those of the font."""

from __future__ import annotations

import pytest

from sld.layout.diagram.line import Line, Role
from sld.layout.diagram.wrapping import broken
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
