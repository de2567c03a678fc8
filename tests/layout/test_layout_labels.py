"""The texts beside the devices of the village hall. The spec's own values; computed ones as tests/steps has them."""

from __future__ import annotations

from gettext import NullTranslations
from pathlib import Path

import pytest
from lettering import texts

from sld import run
from sld.layout.diagram.labels import below
from sld.layout.diagram.line import Line, Role, kilo
from sld.layout.diagram.wrapping import broken
from sld.symbols.typeface import text_width_mm
from sld.words import ENGLISH, Language, Sayable, amount, phrase, sequence, unbroken, verbatim

HALL = run.check(Path(__file__).parents[2] / "specs" / "village-hall.yaml")


@pytest.mark.parametrize(
    ("key", "lines"),
    [
        (
            "supply",
            (
                "3N PE ~",
                "400/230 V",
                "TN-S Ipf 5.5 kA",
                "Ze 0.28 Ω",
                "cable not given",
                "No. MV 0042 7731",
                "feed-in ≤ 8 kW",
            ),
        ),
        ("supply.service_fuse", ("50 A gG",)),
        ("boards.main.circuit.1", ("63 A 4P",)),
        ("inverters.hall.circuit.2", ("Iz 24 A",)),
        ("inverters.hall.inputs.0", ("Uoc 741 V", "≤ 1000 V", "Isc 17.4 A", "≤ 24 A")),
        ("inverters.hall.inputs.0.strings.0", ("18 × BF-410", "7.38 kWp", "SE, 30°", "roof (outdoors)")),
        ("inverters.hall.inputs.0.strings.0.cable", ()),
        ("loads.hall_loads", ("18 kW", "Ib 26 A")),
    ],
)
def test_lines_below_a_symbol(key: str, lines: tuple[str, ...]) -> None:
    assert texts(below(HALL.system.devices[key], HALL.system, HALL.ratings)) == lines


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [(800, "W", "800 W"), (1000, "W", "1 kW"), (14760, "Wp", "14.8 kWp"), (999.4, "VA", "999 VA")],
)
def test_thousands_are_written_as_kilo(value: float, unit: str, text: str) -> None:
    assert str(kilo(value, unit)) == text


SAID: list[Sayable] = [
    unbroken("Uoc", amount(741, "V")),
    sequence(["3N", "PE", "~", amount(50, "Hz")], " "),
    verbatim("plant room on the upper floor"),
    sequence([amount(12, "kW"), amount(12, "kVA")], " "),
    unbroken("≤", amount(1000, "V")),
    phrase("built in: {functions}", functions=phrase("surge protection {class_}", class_=unbroken("type 2"))),
    sequence(["TN-S", unbroken("Ipf", amount(16, "kA"))], " "),
]


@pytest.mark.parametrize("width_mm", [23.0, 19.0, 15.0])
def test_lines_are_broken_at_common_spaces_only(width_mm: float) -> None:
    lines = broken(tuple(Line(Role.RATED, said) for said in SAID), width_mm, ENGLISH)
    assert " ".join(texts(lines)) == " ".join(map(str, SAID))
    for text in texts(lines):
        whole = " " not in text or text in ("Uoc 741 V", "Ipf 16 kA")  # a symbol with its value
        assert text_width_mm(text) <= width_mm or whole
        last = text.removesuffix("type 2").split() or [""]  # a type with its number is whole
        assert not last[-1].replace(".", "").isdigit(), f"a number without its unit: {text}"


@pytest.mark.parametrize(
    ("said", "width_mm", "rows"),
    [
        (sequence(["TN-S", unbroken("Ipf", amount(16, "kA"))], " "), 19.0, ["TN-S", "Ipf 16 kA"]),
        (unbroken("Isc", amount(17.4, "A")), 24.5, ["Isc 17.4 A"]),
        (unbroken("Isc", amount(17.4, "A")), 12.0, ["Isc 17.4 A"]),
        (unbroken("Uc", unbroken("≥", amount(275, "V"))), 12.0, ["Uc ≥ 275 V"]),
        (unbroken("≤", amount(1000, "V")), 5.0, ["≤ 1000 V"]),
        (amount(1000, "V"), 5.0, ["1000 V"]),
    ],
)
def test_a_symbol_never_leaves_its_value(said: Sayable, width_mm: float, rows: list[str]) -> None:
    assert list(texts(broken((Line(Role.RATED, said),), width_mm, ENGLISH))) == rows


def test_each_part_of_a_broken_line_is_for_what_the_line_is_for() -> None:
    lines = broken((Line(Role.PLACE, verbatim("plant room on the upper floor")),), 15.0, ENGLISH)
    assert len(lines) > 2
    assert {line.role for line in lines} == {Role.PLACE}


def test_a_line_is_measured_in_its_language() -> None:
    """A word twice as long needs another line."""

    class Long(NullTranslations):
        def gettext(self, message: str) -> str:
            return message.replace("wireless", "drahtlos verbunden").replace(" to ", " mit ")

    line = (Line(Role.LINK, phrase("wireless to {device}", device="-TF1")),)
    assert texts(broken(line, 24.5, ENGLISH)) == ("wireless to -TF1",)
    assert texts(broken(line, 24.5, Language("xx", Long()))) == ("drahtlos", "verbunden mit", "-TF1")


def test_a_current_is_held_against_a_limit_at_the_conditions_that_the_limit_is_for() -> None:
    """Six strings of 13.8 A, 7 % more from the rear: 88.6 A at standard test conditions; KI would make it 111 A."""
    field = run.check(Path(__file__).parents[2] / "specs" / "saltmarsh-field.yaml")
    said = texts(below(field.system.devices["inverters.field.inputs.0"], field.system, field.ratings))
    assert said[2:4] == ("Isc STC 88.6 A", "≤ 100 A")
