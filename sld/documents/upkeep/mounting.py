"""What makers state about mounting, discharge and switching on, for each inverter, battery and junction box."""

from __future__ import annotations

from collections.abc import Iterator

from sld.documents.alike import alike_as_one
from sld.documents.cell import Cell, answer, designated, given
from sld.documents.section import Column, Paragraphs, Table
from sld.model.device import BatteryUnit, InverterUnit
from sld.model.places import place_of, place_words
from sld.model.system import System
from sld.spec.blocks.mounting import Mounting
from sld.words import NOTHING, Sayable, Value, amount, listing, phrase, sequence, verbatim

__all__ = ["mounting", "mounting_notes", "starting"]


def mounting(system: System) -> Table:
    """Return mass, clearances, degree of protection and temperatures of what is mounted, blank where not stated."""
    columns = (
        Column(phrase("Designation")),
        Column(phrase("Place"), 1.0),
        Column(phrase("Mass"), right=True),
        Column(phrase("Clearances"), 1.2),
        Column(phrase("Enclosure")),
        Column(phrase("Air temperature")),
    )
    rows = (_row(*each) for each in _mounted(system))
    return Table("mounting", phrase("Mounting"), columns, alike_as_one(rows))


def _mounted(system: System) -> Iterator[tuple[str, Sayable, Mounting | None]]:
    """Yield designation, place and what is stated of what is mounted."""
    locations = system.site.locations
    for unit in system.of(InverterUnit):
        yield unit.designation, place_words(locations, place_of(system, unit)), unit.type.mounting
    for store in system.of(BatteryUnit):
        yield store.designation, place_words(locations, place_of(system, store)), store.given.mounting
    for designation, box in system.boxes.values():
        yield designation, place_words(locations, box.location or ""), box.mounting


def _row(designation: str, place: Sayable, stated: Mounting | None) -> tuple[Cell, ...]:
    said = stated or Mounting()
    return (
        designated(designation),
        given(place),
        answer("mass", amount(said.mass_kg, "kg") if said.mass_kg else None),
        answer("clearances", _clearances(said)),
        answer("enclosure", said.ip),
        answer("temperature_range", _temperatures(said)),
    )


def _clearances(said: Mounting) -> Sayable:
    kept: list[Value] = []
    if said.clearance_above_mm is not None:
        kept.append(phrase("above {distance}", distance=amount(said.clearance_above_mm, "mm", 5)))
    if said.clearance_below_mm is not None:
        kept.append(phrase("below {distance}", distance=amount(said.clearance_below_mm, "mm", 5)))
    if said.clearance_beside_mm is not None:
        kept.append(phrase("beside {distance}", distance=amount(said.clearance_beside_mm, "mm", 5)))
    if said.clearance_front_mm is not None:
        kept.append(phrase("in front {distance}", distance=amount(said.clearance_front_mm, "mm", 5)))
    return sequence(kept) if kept else NOTHING


def _temperatures(said: Mounting) -> Sayable:
    kept: list[Value] = []
    if said.temperature_min_c is not None:
        kept.append(phrase("from {temperature}", temperature=amount(said.temperature_min_c, "°C")))
    if said.temperature_max_c is not None:
        kept.append(phrase("to {temperature}", temperature=amount(said.temperature_max_c, "°C")))
    return sequence(kept, " ") if kept else NOTHING


def mounting_notes(system: System) -> Paragraphs:
    """Return what is minded when such devices are mounted (common practice, no source), with their masses."""
    heavy = [
        phrase("{designation} {mass}", designation=designation, mass=amount(said.mass_kg, "kg"))
        for designation, _, said in _mounted(system)
        if said is not None and said.mass_kg
    ]
    bears = (
        [phrase("The wall bears a multiple of the mass, as the maker states it: {devices}.", devices=listing(heavy))]
        if heavy
        else []
    )
    texts: list[Sayable] = [
        *bears,
        phrase(
            "Not on or beside combustible material, not in the sun, rain or flooding, not where animals' ammonia or "
            "salt reach; switches within reach, clearances kept free for good. Common practice, no source; the makers' "
            "manuals take precedence."
        ),
    ]
    return Paragraphs("mounting_notes", phrase("For those who mount"), tuple(texts), numbered=True)


def starting(system: System) -> Table:
    """Return time of discharge and order of switching on by type of inverter, as its maker states them."""
    columns = (
        Column(phrase("Inverter"), 0.8),
        Column(phrase("Time of discharge")),
        Column(phrase("Order of switching on, as the maker states it"), 2.0),
    )
    types = {unit.type_name: (unit.product or unit.type_name, unit.type) for unit in system.of(InverterUnit)}
    rows = tuple(
        (
            given(product),
            answer("discharge_time", amount(kind.discharge_time_s, "s", 4) if kind.discharge_time_s else None),
            answer("switching_on", _steps(kind.switching_on)),
        )
        for product, kind in types.values()
    )
    return Table("starting", phrase("Discharge and switching on"), columns, rows)


def _steps(texts: list[str]) -> Sayable:
    numbered = [verbatim(f"{number}. {text}") for number, text in enumerate(texts, 1)]
    return sequence(numbered, "; ") if numbered else NOTHING
