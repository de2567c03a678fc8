"""Schedules: strings, equipment, cables, earthing conductors, data bus, and every rating with formula and clause."""

from __future__ import annotations

from collections.abc import Mapping

from sld.layout.labels import below
from sld.model.device import Apparatus, BatteryUnit, Busbar, Cable, InverterUnit, StringGroup
from sld.model.system import System
from sld.quantity import Rating, shown
from sld.rate import Ratings
from sld.sheet.blocks.table import Column, TableBlock

__all__ = ["schedules"]


def schedules(system: System, ratings: Ratings) -> list[TableBlock]:
    """Return the schedules that have something to say, in the order they are printed."""
    found = (
        _strings(system, ratings),
        _cables(system, ratings),
        _equipment(system, ratings),
        _earthing(system, ratings),
        _bus(system, ratings),
        _ratings(system, ratings),
    )
    return [table for table in found if table.rows]


def _quantity(rating: Rating | None) -> str:
    return rating.quantity() if rating else "–"


def _strings(system: System, ratings: Ratings) -> TableBlock:
    columns = (
        Column("Designation"), Column("Input"), Column("Strings", align="right"), Column("In series", align="right"),
        Column("Module", 1.0), Column("Uoc,max"), Column("Umpp,min"), Column("Isc,d"), Column("Orientation", 1.0),
    )  # fmt: skip
    rows = []
    for group in system.of(StringGroup):
        terminal = next(d for d in system.upstream(group.key) if d.kind == "input")
        rows.append((
            group.designation, terminal.designation, str(group.given.count), str(group.given.modules_in_series),
            group.model, *(_quantity(ratings.get(group.key, s)) for s in ("Uoc,max", "Umpp,min", "Isc,d")),
            group.given.orientation or "",
        ))  # fmt: skip
    return TableBlock("String schedule", columns, tuple(rows))


def _cables(system: System, ratings: Ratings) -> TableBlock:
    columns = (
        Column("Designation"), Column("From – to", 1.0), Column("Type", 1.0), Column("Section"),
        Column("Length", align="right"), Column("Iz,min"), Column("Iz"), Column("Δu"),
    )  # fmt: skip
    rows = []
    for cable in system.of(Cable):
        lines = below(cable, system, ratings)
        fed = system.children.get(cable.key, ())
        ends = [system.devices[cable.parent].designation, *(system.devices[key].designation for key in fed)]
        change = ratings.get(cable.key, "Δu") or ratings.get(cable.key, "Δu rise")
        rows.append((
            cable.designation, " – ".join(ends), cable.marking, lines[1] if len(lines) > 1 else "",
            f"{shown(cable.given.length_m)} m", _quantity(ratings.get(cable.key, "Iz,min")),
            _quantity(ratings.get(cable.key, "Iz")), _quantity(change),
        ))  # fmt: skip
    return TableBlock("Cable schedule", columns, tuple(rows))


def _equipment(system: System, ratings: Ratings) -> TableBlock:
    columns = (
        Column("Designation"), Column("Device"), Column("Make, model", 1.0), Column("Ratings", 1.4),
        Column("Location", 0.7), Column("Status"),
    )  # fmt: skip
    rows = []
    for device in system.devices.values():
        if not isinstance(device, Apparatus | InverterUnit | Busbar | BatteryUnit):
            continue
        made = device.product
        lines = [line for line in below(device, system, ratings) if line not in (made, device.location, device.name)]
        note = f"{device.name} {device.note}".strip()
        rows.append((
            device.designation, device.kind.replace("_", " "), made or "–",
            ", ".join(lines) + (f" ({note})" if note else ""), device.location or "–", device.status,
        ))  # fmt: skip
    return TableBlock("Equipment schedule", columns, tuple(rows))


def _earthing(system: System, ratings: Ratings) -> TableBlock:
    columns = (Column("Designation"), Column("From main earthing terminal to", 1.0), Column("Least"), Column("Section"),
               Column("Length", align="right"), Column("Clause", 1.0))  # fmt: skip
    rows = []
    for conductor in system.earth_conductors:
        least = ratings.get(conductor.key, "S,min")
        length = f"{shown(conductor.length_m)} m" if conductor.length_m else "–"
        rows.append((
            conductor.designation, conductor.to, _quantity(least), _quantity(ratings.get(conductor.key, "S")), length,
            least.clause if least else "as brought by the supply",
        ))  # fmt: skip
    return TableBlock("Earthing conductors", columns, tuple(rows))


def _bus(system: System, ratings: Ratings) -> TableBlock:
    columns = (Column("Chain"), Column("No.", align="right"), Column("Device"), Column("Address", align="right"),
               Column("Cable from the one before", 1.0), Column("Terminated"))  # fmt: skip
    rows = []
    for chain in system.chains:
        for number, node in enumerate(chain.nodes, start=1):
            length = f"{shown(node.length_m)} m" if node.length_m is not None else "–"
            rows.append((
                chain.designation, str(number), system.devices[node.device].designation,
                "–" if node.address is None else str(node.address), length if number > 1 else "",
                "120 Ω" if node.terminated else "",
            ))  # fmt: skip
    return TableBlock("Data bus", columns, tuple(rows))


def _ratings(system: System, ratings: Ratings) -> TableBlock:
    """Return every rating that was computed or chosen: each formula once with its source, then the values by device.

    Equal values with equal inputs share a line.
    """
    names: Mapping[str, str] = {
        **{key: device.designation for key, device in system.devices.items()},
        **{conductor.key: conductor.designation for conductor in system.earth_conductors},
        **{chain.key: chain.designation for chain in system.chains},
        "": "system",
    }
    formulas: dict[tuple[str, str, str], dict[tuple[str, str], list[str]]] = {}
    for key, rating in ratings:
        if rating.formula == "as specified":
            continue
        values = formulas.setdefault((rating.symbol, rating.formula, rating.clause), {})
        devices = values.setdefault((rating.quantity(), "; ".join(map(str, rating.given))), [])
        if names.get(key, key) not in devices:
            devices.append(names.get(key, key))
    rows = []
    for (symbol, formula, clause), values in formulas.items():
        lines = [f"{formula} | {clause}"]
        for (quantity, given), devices in values.items():
            lines.append(f"{', '.join(devices)}: {quantity}" + (f" with {given}" if given else ""))
        rows.append((symbol, "\n".join(lines)))
    return TableBlock(
        "Ratings", (Column("Rating"), Column("Formula | source; device: value with inputs", 1.0)), tuple(rows)
    )
