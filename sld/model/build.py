"""Spec -> System: types filled in, repeats expanded, circuits joined to one tree, every device designated.

A spec with several supply points makes a system of each: what stands behind it, with nothing of the others.

The spec's names are known to be good here (`sld.spec.references` has seen them). What the spec leaves out and the
drawing cannot do without is added and said: each addition is a finding of severity `assumption`.
"""

from __future__ import annotations

from types import MappingProxyType

from sld.frozen import replace
from sld.grid import GENERIC, Country, rules_of
from sld.model.ac_side import add_boards, add_network
from sld.model.bus import data_chains, data_nodes, trip_lines
from sld.model.copies import told_apart
from sld.model.designation import Designator
from sld.model.draft import Draft
from sld.model.earth import earth_conductors
from sld.model.kinds.units import EARTH_TERMINAL
from sld.model.names import boxes, device_names, enclosure_captions, owner_designations
from sld.model.ownership import last_of_the_operator
from sld.model.system import System
from sld.model.walk import Walk
from sld.spec.blocks.earthing import Earthing
from sld.spec.blocks.supply import Supply, usual_voltage_v
from sld.spec.document import Spec, follows_nec
from sld.spec.doubts import unusual
from sld.spec.frequency import usual_frequency_hz
from sld.spec.names import named_blocks
from sld.spec.supply_points import supply_points
from sld.words import amount, phrase

__all__ = ["build", "systems"]


def build(spec: Spec, grid_rules: Country | None = None, *, equal: bool = True) -> System:
    """Return the resolved system of a spec whose references are good, and that has one supply point."""
    (system,) = systems(spec, grid_rules, equal=equal)
    return system


def systems(spec: Spec, grid_rules: Country | None = None, *, equal: bool = True) -> tuple[System, ...]:
    """Return the resolved system behind each supply point of a spec whose references are good.

    grid_rules: where a file of the spec replaces some of the country's. equal: inverters of one block are rated and
    checked once for all where nothing tells them apart; else each for itself, which comes to the same and takes longer.
    """
    taken = {block.designation for _, block in named_blocks(spec) if block.designation}
    designator = Designator(spec.drawing.designation_letters, taken)
    owners = owner_designations(spec, designator)
    apart = told_apart(spec) if equal else None
    found = [_behind(Draft(point, designator, owners, apart), grid_rules) for point in supply_points(spec)]
    return tuple(replace(each, others=tuple(other for other in found if other is not each)) for each in found)


def _behind(draft: Draft, grid_rules: Country | None) -> System:
    """Return the system behind one supply point. grid_rules: those of the country where they are left out."""
    spec, point = draft.spec, draft.point
    voltage_v = _nominal_voltage_v(draft)
    add_boards(draft, add_network(draft))
    for node in data_nodes(spec, draft.designator):
        draft.add(node)
    boundary = last_of_the_operator(draft)
    names = device_names(spec, draft.devices.values())
    tripping = dict(trip_lines(draft.devices, names))
    earthing = spec.earthing or Earthing()
    conductors, said = earth_conductors(point, earthing, draft.designator)
    chains = data_chains(spec, names, draft.devices, draft.designator)
    earthing_designation = earthing.designation or draft.designator.next("", EARTH_TERMINAL)
    enclosures = enclosure_captions(spec, draft.boards, draft.owners, draft.devices.values())
    copies = {copy.key for of_one in draft.copies.values() for copy in of_one}
    whole = Walk(draft.devices.values())
    firsts = Walk(each for each in whole if each.owner not in copies) if copies else whole
    return System(
        project=spec.project,
        drawing=spec.drawing,
        profile=spec.profile,
        site=spec.site,
        point=point,
        supply=_supply(draft),
        voltage_v=voltage_v,
        devices=MappingProxyType(draft.devices),
        children=MappingProxyType({key: tuple(keys) for key, keys in draft.children.items()}),
        root=f"{point.prefix}supply",
        ownership_boundary=boundary,
        chains=chains,
        links=(*(spec.data.links if spec.data else ()), *tripping.values()),
        earthing=earthing,
        earthing_designation=earthing_designation,
        earth_conductors=conductors,
        enclosures=MappingProxyType(enclosures),
        boxes=MappingProxyType(boxes(spec, draft.owners)),
        names=MappingProxyType({**names, **{key: (key,) for key in tripping}}),
        notification=spec.notification,
        papers=tuple(spec.documents),
        upkeep=spec.upkeep,
        accept=tuple(spec.accept),
        unusual=tuple(each._replace(at=point.place(each.at)) for each in unusual(spec)),
        assumptions=(*draft.assumptions, *said),
        kinds=frozenset(device.kind for device in draft.devices.values()),
        copies=MappingProxyType(draft.copies),
        whole=whole,
        firsts=firsts,
        walked=whole,
        grid_rules=grid_rules or rules_of(spec.supply.country if spec.supply.grid_rules != GENERIC else None),
    )


def _supply(draft: Draft) -> Supply:
    """Return the supply, its frequency that of the country where the spec leaves it out."""
    supply = draft.spec.supply
    if supply.follows_three_wires:
        draft.assume(
            draft.point.place(("supply",)),
            "",
            phrase(
                "no neutral distributed, as usual at {voltage} between three lines",
                voltage=amount(supply.voltage_v or 0, "V"),
            ),
            phrase("give `neutral` under `supply`"),
        )
    in_north_america = follows_nec(draft.spec.profile)
    frequency_hz = usual_frequency_hz(supply.country) or (60.0 if in_north_america else 50.0)
    as_usual = frequency_hz == 50.0 and not in_north_america
    if as_usual or "frequency_hz" in supply.model_fields_set:
        return supply
    draft.assume(
        draft.point.place(("supply",)),
        "",
        phrase("nominal frequency {frequency}", frequency=amount(frequency_hz, "Hz")),
        phrase("give `frequency` under `supply`"),
    )
    return supply.model_copy(update={"frequency_hz": frequency_hz})


def _nominal_voltage_v(draft: Draft) -> float:
    """Return the nominal voltage: as given, else the usual one. [V]"""
    supply = draft.spec.supply
    if supply.voltage_v is not None:
        return supply.voltage_v
    voltage_v = usual_voltage_v(supply, follows_nec(draft.spec.profile))
    draft.assume(
        draft.point.place(("supply",)),
        "",
        phrase("nominal voltage {voltage}", voltage=amount(voltage_v, "V")),
        phrase("give `voltage` under `supply`"),
    )
    return voltage_v
