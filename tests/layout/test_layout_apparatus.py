"""What stands below devices of the AC side that the drawings of `tests/printed` do not have. Data are invented."""

from __future__ import annotations

from pathlib import Path

import pytest
from lettering import texts

from sld import run
from sld.layout.diagram.labels import below
from sld.layout.diagram.line import Role
from sld.layout.diagram.settings import settings
from sld.spec.blocks.circuit import Breaker

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
        # how it is set stands between what it is rated for and what it breaks
        (
            "boards.main.circuit.0",
            ("400 A 4P", "Ir 360 A", "Isd 2 kA 0.1 s", "Ii 4 kA", "Icu 25 kA"),
            (Role.RATED, Role.SETTING, Role.SETTING, Role.SETTING, Role.RATED),
        ),
        # two strings of 16 modules of 540 W: 2 · 16 · 540 W = 17.28 kWp
        ("inverters.hall-1.inputs.0.strings.0", ("2 × 16 × Corrin 540", "17.3 kWp"), (Role.PRODUCT, Role.RATED)),
    ],
)
def test_lines_below_a_device(key: str, lines: tuple[str, ...], roles: tuple[Role, ...]) -> None:
    found = below(WORKS.system.devices[key], WORKS.system, WORKS.ratings)
    assert texts(found) == lines
    assert tuple(line.role for line in found) == roles


MOULDED = {
    "kind": "breaker", "construction": "moulded_case", "rated_current": "1000 A", "overload_setting": "900 A",
    "short_time_setting": "5 kA", "short_time_delay": "0.2 s", "instantaneous_setting": "10 kA",
    "earth_fault_setting": "400 A", "earth_fault_delay": "0.3 s", "breaking_capacity": "36 kA",
}  # fmt: skip


@pytest.mark.parametrize(
    ("left_out", "told"),
    [
        ((), ["Ir 900 A", "Isd 5 kA 0.2 s", "Ii 10 kA", "Ig 400 A 0.3 s"]),
        (("short_time_delay", "earth_fault_delay"), ["Ir 900 A", "Isd 5 kA", "Ii 10 kA", "Ig 400 A"]),
        (("instantaneous_setting",), ["Ir 900 A", "Isd 5 kA 0.2 s", "Ig 400 A 0.3 s"]),
        (("earth_fault_setting", "earth_fault_delay"), ["Ir 900 A", "Isd 5 kA 0.2 s", "Ii 10 kA"]),
        (("short_time_setting", "short_time_delay"), ["Ir 900 A", "Ii 10 kA", "Ig 400 A 0.3 s"]),
    ],
)
def test_settings_of_a_breaker_by_their_symbols(left_out: tuple[str, ...], told: list[str]) -> None:
    """IEC 60947-2 Annex K (from memory): Ir overload, Isd short time, Ii instantaneous, Ig earth fault."""
    given = Breaker.model_validate({key: value for key, value in MOULDED.items() if key not in left_out})
    lines = [line for line in settings(given) if line]
    assert [str(line.said).replace("\u00a0", " ") for line in lines] == told
    assert {line.role for line in lines} == {Role.SETTING}
