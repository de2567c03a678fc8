"""What the diagram says: nothing that the designer wrote may be missing, and nothing that is not there may be said."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml
from lettering import texts

from sld.layout.diagram.chart import chart
from sld.layout.diagram.diagram import Cell, Diagram, Medium
from sld.layout.diagram.labels import below
from sld.layout.diagram.line import Line, Role
from sld.layout.diagram.wrapping import broken
from sld.layout.passes.lettering import tap_letters
from sld.model import System, build
from sld.model.wording import MEDIA
from sld.spec.complain import validate
from sld.spec.document import Spec
from sld.spec.source import read_text
from sld.steps import Ratings, rate
from sld.symbols.typeface import text_width_mm
from sld.words import ENGLISH, phrase

SPECS = Path(__file__).parents[2] / "specs"
HALL = (SPECS / "village-hall.yaml").read_text(encoding="utf-8")


def made(changes: dict[str, Any]) -> tuple[System, Ratings]:
    """Return system and ratings of the village hall with values set by dotted path."""
    data: Any = yaml.safe_load(HALL)
    for path, value in changes.items():
        *way, last = path.split(".")
        here = data
        for step in way:
            here = here[int(step)] if isinstance(here, list) else here.setdefault(step, {})
        here[last] = value
    spec, mistakes = validate(Spec, read_text(yaml.safe_dump(data, allow_unicode=True), folder=SPECS))
    assert spec is not None, mistakes
    system = build(spec)
    return system, rate(system)


def cells(diagram: Diagram) -> dict[str, Cell]:
    waiting, found = [diagram.root], {}
    while waiting:
        cell = waiting.pop()
        found[cell.key] = cell
        waiting.extend(cell.children)
    return found


@pytest.mark.parametrize(
    ("earthing_system", "kind"),
    [("TN-S", "3N PE ~"), ("TN-C-S", "3N PE ~"), ("TT", "3N ~"), ("IT", "3N ~")],
)
def test_a_network_without_protective_conductor_names_none(earthing_system: str, kind: str) -> None:
    """IEC 60364-1:2005 312.2: in TT and IT the frames are earthed by the installation's own electrode."""
    system, ratings = made({"supply.earthing_system": earthing_system})
    assert texts(below(system.devices["supply"], system, ratings))[0] == kind


def test_behind_a_transformer_the_network_is_the_high_voltage_side() -> None:
    transformer = {"rated_power": "250 kVA", "primary_voltage": "20 kV", "short_circuit_voltage": "4 %",
                   "network_fault_power": "250 MVA"}  # fmt: skip
    system, ratings = made({"supply.transformer": transformer, "supply.operator": "Upper valley network"})
    network = texts(below(system.devices["supply"], system, ratings))
    assert network[:3] == ("3 ~", "20 kV", "Sk 250 MVA")
    low = texts(below(system.devices["supply.transformer"], system, ratings))
    assert {"3N PE ~", "400/230 V"} <= set(low)
    assert texts(cells(chart(system, ratings, {}))["supply"].above[1:]) == ("Upper valley network",)


def test_names_stand_above_the_symbols() -> None:
    system, ratings = made({"loads.oven": {"power": "3 kW"}, "inverters.hall.name": "Attic"})
    found = cells(chart(system, ratings, {}))
    assert texts(found["loads.oven"].above)[1] == "oven"
    assert texts(found["inverters.hall"].above)[1] == "Attic"


@pytest.mark.parametrize(("status", "is_told"), [("new", False), ("existing", True), ("future", True)])
def test_status_is_told_in_words_where_statuses_are_mixed(status: str, is_told: bool) -> None:
    system, ratings = made({"inverters.hall.status": status})
    assert (texts(cells(chart(system, ratings, {}))["inverters.hall"].below)[-1] == status) is is_told


@pytest.mark.parametrize("status", ["new", "existing", "future"])
def test_an_assumed_device_says_so_where_statuses_are_mixed(status: str) -> None:
    """Beside devices that stand there (the loads of the hall), one that nobody saw must not pass for one of them."""
    system, ratings = made({"inverters.hall.status": status, "inverters.hall.circuit": None})
    drawn = cells(chart(system, ratings, {}))["inverters.hall.circuit.0"]
    assert texts(drawn.below)[-1] == "assumed"
    assert drawn.status == ("future" if status == "future" else "new")


@pytest.mark.parametrize("medium", ["ethernet", "wireless", "pulse", "trip"])
def test_a_link_is_a_line_of_its_medium(medium: str) -> None:
    system, ratings = made({"data.links": [{"from": "hall", "to": "router", "medium": medium}]})
    (link,) = [chain for chain in chart(system, ratings, {}).chains if chain.key.startswith("data.links")]
    assert [step.key for step in link.steps] == ["inverters.hall", system.names["router"][0]]
    assert link.medium is Medium(medium)
    assert link.said == MEDIA[medium]


def test_a_functional_earth_hangs_at_the_input() -> None:
    system, ratings = made({"inverters.hall.inputs.0.functional_earth": True})
    found = cells(chart(system, ratings, {}))["inverters.hall.inputs.0"]
    assert found.earth is not None
    assert (str(found.earth.said), found.earth_symbol) == ("functional earth", "functional_earth")


@pytest.mark.parametrize(
    ("lightning", "lines"),
    [
        ({"level": "II", "separation_kept": False, "down_conductors": 8},
         ["class II, 8 down-conductors", "separation to the array NOT kept"]),
        ({"separation_kept": True}, ["class III", "separation to the array kept"]),
    ],
)  # fmt: skip
def test_lightning_protection_is_described_at_its_tap(lightning: dict[str, object], lines: list[str]) -> None:
    system, ratings = made({"earthing.lightning_protection": lightning})
    bar = chart(system, ratings, {}).earth
    assert bar is not None
    (tap,) = [tap for tap in bar.taps if tap.symbol == "lightning_protection"]
    assert list(texts(tap.lines))[-2:] == lines


@pytest.mark.parametrize(("test_class", "line"), [("2", "type 2: ≥ 6 mm²* Cu"), ("1+2", "type 1+2: ≥ 16 mm²* Cu")])
def test_surge_protection_at_the_bar_names_the_types_that_are_there(test_class: str, line: str) -> None:
    """Sections: IEC 60364-5-53:2019 534.4.8 (from memory)."""
    changes: dict[str, Any] = {f"inverters.hall.inputs.{index}.circuit": [] for index in (0, 1)}
    system, ratings = made({"boards.main.circuit.3.test_class": test_class, **changes})
    bar = chart(system, ratings, {}).earth
    assert bar is not None
    assert [text for tap in bar.taps if tap.designation == "PE" for text in texts(tap.lines) if "type" in text] == [
        line
    ]


def test_a_number_far_too_long_for_a_line_is_parted() -> None:
    number = "DE0001234567890123456789012345678901234567890"
    lines = broken((Line(Role.NUMBER, phrase("No. {number}", number=number)),), 23.0, ENGLISH)
    assert len(lines) > 2
    assert "".join(texts(lines)) == f"No.{number}"


def test_a_long_name_of_what_is_bonded_does_not_widen_the_sheet() -> None:
    """The narrowest sheet, A4 upright, has 180 mm inside its frame (ISO 5457): no tap may ask for more."""
    name = "structural steel of the old hall, of the extension and of the canopy along the northern loading ramp"
    system, ratings = made({"earthing.bonding.0.to": name})
    bar = chart(system, ratings, {}).earth
    assert bar is not None
    tap = next(tap for tap in bar.taps if name in texts(tap.lines))
    written = [line.text for line in tap_letters(tap, ENGLISH)]
    assert name in " ".join(written)
    assert max(map(text_width_mm, written)) < 180 / 2
