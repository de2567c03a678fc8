"""What stands below devices of the AC side that the drawings of `tests/printed` do not have. Data are invented."""

from __future__ import annotations

from pathlib import Path

import pytest
from lettering import texts

from sld import run
from sld.layout.diagram.labels import below
from sld.layout.diagram.line import Role

WORKS = run.check(Path(__file__).parents[1] / "designs" / "ordinary" / "it-works-relay.yaml")


@pytest.mark.parametrize(
    ("key", "lines", "roles"),
    [
        # the relay opens the contactor behind it; its settings are named after CEI 0-16
        (
            "boards.pv.circuit.1",
            ("measures voltage and frequency", "opens -UC2-QA1", "CEI 0-16"),
            (Role.RATED, Role.SETTING, Role.SETTING),
        ),
        ("boards.pv.circuit.2", ("200 A 4P",), (Role.RATED,)),
    ],
)
def test_lines_below_a_device(key: str, lines: tuple[str, ...], roles: tuple[Role, ...]) -> None:
    found = below(WORKS.system.devices[key], WORKS.system, WORKS.ratings)
    assert texts(found) == lines
    assert tuple(line.role for line in found) == roles
