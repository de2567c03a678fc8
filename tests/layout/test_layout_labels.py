"""The texts beside the devices of the village hall. The spec's own values; computed ones as tests/steps has them."""

from __future__ import annotations

from pathlib import Path

import pytest

from sld import run
from sld.layout.diagram.labels import below, kilo, wrapped
from sld.symbols.typeface import text_width_mm

HALL = run.check(Path(__file__).parents[2] / "specs" / "village-hall.yaml")


@pytest.mark.parametrize(
    ("key", "lines"),
    [
        ("supply", ("3N PE ~ 50 Hz", "400/230 V", "TN-S Ipf 5.5 kA", "No. MV 0042 7731", "feed-in ≤ 8 kW")),
        ("supply.service_fuse", ("50 A gG",)),
        ("boards.main.circuit.1", ("63 A 4P",)),
        ("inverters.hall.circuit.2", ("NYM-J", "5 × 4 mm²", "14 m", "Iz 32 A")),
        ("inverters.hall.inputs.0", ("Uoc 741 V", "≤ 1000 V", "Isc 17.4 A")),
        ("inverters.hall.inputs.0.strings.0", ("18 × BF-410", "7.38 kWp", "SE, 30°")),
        (
            "inverters.hall.inputs.0.strings.0.cable",
            ("H1Z2Z2-K", "2 × 4 mm²", "32 m", "Iz 40.5 A", "roof – meter room"),
        ),
        ("loads.hall_loads", ("18 kW", "Ib 26 A")),
    ],
)
def test_lines_below_a_symbol(key: str, lines: tuple[str, ...]) -> None:
    assert below(HALL.system.devices[key], HALL.system, HALL.ratings) == lines


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [(800, "W", "800 W"), (1000, "W", "1 kW"), (14760, "Wp", "14.8 kWp"), (999.4, "VA", "999 VA")],
)
def test_thousands_are_written_as_kilo(value: float, unit: str, text: str) -> None:
    assert kilo(value, unit) == text


BUILT_IN = "DC surge protection type 2"


@pytest.mark.parametrize("width_mm", [23.0, 19.0, 15.0])
def test_wrapping_tears_no_quantity_and_no_word(width_mm: float) -> None:
    lines = wrapped(
        ("Uoc 741 V", "3N PE ~ 50 Hz", "plant room on the upper floor", "12 kW 12 kVA", "≤ 1000 V", BUILT_IN), width_mm
    )
    text = " ".join(lines)
    assert text == "Uoc 741 V 3N PE ~ 50 Hz plant room on the upper floor 12 kW 12 kVA ≤ 1000 V " + BUILT_IN
    for line in lines:
        assert text_width_mm(line) <= width_mm or " " not in line.replace("≤ ", "")
        last = line.removesuffix("type 2").split() or [""]  # a type with its number is whole
        assert not last[-1].replace(".", "").isdigit(), f"a number without its unit: {line}"
