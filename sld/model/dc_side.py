"""The DC side of an inverter: its inputs with their circuits and strings, and a battery at its battery terminals."""

from __future__ import annotations

from collections.abc import Sequence

from sld.finding import SpecPath
from sld.frozen import replace
from sld.model.battery_side import add_battery_of_inverter
from sld.model.circuit import Place, Run, add_device, first_to_last, merged, placed_fields
from sld.model.device import InputTerminal, InverterUnit, StringGroup
from sld.model.draft import Draft
from sld.model.kinds.units import INPUT, STRING
from sld.spec.blocks.circuit import BranchConnector, DcDevice, DcIsolator, Installed
from sld.spec.blocks.inverter import MppInput
from sld.spec.blocks.optimiser import Optimiser
from sld.spec.blocks.string import Input, PvString
from sld.words import phrase

__all__ = ["inputs_and_battery"]


def inputs_and_battery(draft: Draft, unit: InverterUnit, spec_name: str) -> None:
    """Add all that is connected to the DC side of an inverter. spec_name: its name in the spec, without a number."""
    limits = [group for group in unit.type.inputs for _ in range(group.count)]
    for index, given in enumerate(unit.given.inputs):
        _add_input(draft, unit, index, given, limits[index] if index < len(limits) else None)
    for name, battery in draft.spec.batteries.items():
        if f"inverters.{battery.inverter}" in (unit.key, f"inverters.{spec_name}"):
            add_battery_of_inverter(draft, unit, name, battery)


def _add_input(draft: Draft, unit: InverterUnit, index: int, given: Input, limits: MppInput | None) -> None:
    here: SpecPath = (*unit.at, "inputs", index)
    key = f"{unit.key}.inputs.{index}"
    parent = draft.add(
        InputTerminal(
            key=key,
            designation=draft.designator.next(unit.designation, INPUT),
            kind=INPUT,
            at=here,
            parent=unit.key,
            owner=unit.key,
            dc=True,
            given=given,
            limits=limits,
            index=index,
        )
    )
    circuit: Sequence[DcDevice] | None = given.circuit
    if circuit is None:
        circuit = _usual_circuit(draft, unit, index, here, key)
    run = Run(unit.key, dc=True, assumed=given.circuit is None, status=unit.status)
    # the spec goes from the strings to the inverter, the tree from the inverter to the strings
    for position in reversed(range(len(circuit))):
        device = circuit[position]
        at = here if run.assumed else (*here, "circuit", position)
        box = _box(unit, device.enclosure) if isinstance(device, Installed) and device.enclosure else ""
        parent = add_device(draft, device, Place(f"{key}.circuit.{position}", at, parent, box), run)
    for position in range(len(given.strings)):
        at = (*here, "strings", position)
        _add_strings(draft, unit, given, position, Place(f"{key}.strings.{position}", at, parent))


def _box(unit: InverterUnit, name: str) -> str:
    """Return the key of a junction box; each of several equal inverters has its own."""
    return f"junction_boxes.{name}-{unit.copy}" if unit.given.count > 1 else f"junction_boxes.{name}"


def _usual_circuit(draft: Draft, unit: InverterUnit, index: int, here: SpecPath, key: str) -> list[DcDevice]:
    """Return the circuit of an input that gives none: an isolator, unless the inverter does without one."""
    if unit.type.dc_switch or unit.type.plugs_disconnect:
        return []
    what = phrase("a DC isolator at input {number} of `{inverter}`", number=index + 1, inverter=str(unit.at[-1]))
    draft.assume(here, key, what, phrase("give the input's `circuit`"))
    return [DcIsolator(kind="isolator")]


def _add_strings(
    draft: Draft,
    unit: InverterUnit,
    given: Input,
    position: int,
    place: Place,
) -> None:
    """Add one group of equal strings of an input with its fuses and cables. place: of the group."""
    string, key, at, parent = given.strings[position], place.key, place.at, place.parent
    run = Run(unit.key, dc=True, count=string.count)
    if given.string_fuses:
        name = given.string_fuses.enclosure or given.junction_box
        box = _box(unit, name) if name else ""
        groups = replace(run, count=-(-string.count // given.strings_per_fuse))
        parent = add_device(
            draft, given.string_fuses, Place(f"{key}.fuse", (*at[:-2], "string_fuses"), parent, box), groups
        )
    joined = string.joined_ahead
    # the spec goes from the strings to the inverter, the tree from the inverter to the strings
    for index in reversed(range(len(string.circuit))):
        device = string.circuit[index]
        if isinstance(device, Optimiser):
            continue
        several = replace(run, count=string.count // joined)
        name = device.enclosure or ("" if isinstance(device, BranchConnector) else given.junction_box)
        box = _box(unit, name) if name else ""
        parent = add_device(draft, device, Place(f"{key}.each.{index}", (*at, "circuit", index), parent, box), several)
        joined //= device.strings if isinstance(device, BranchConnector) else 1
    if string.cable:
        parent = add_device(draft, string.cable, Place(f"{key}.cable", (*at, "cable"), parent), run)
    if string.circuit and isinstance(string.circuit[0], Optimiser):
        here = _box(unit, string.circuit[0].enclosure) if string.circuit[0].enclosure else ""
        parent = _add_optimisers(draft, string, Place(f"{key}.each.0", (*at, "circuit", 0), parent, here), run)
    designations = tuple(draft.designator.next(unit.designation, STRING) for _ in range(string.count))
    type_block = draft.spec.types.modules[string.module]
    draft.add(
        StringGroup(
            key=key,
            designation=string.designation or first_to_last(designations),
            kind=STRING,
            at=at,
            parent=parent,
            owner=unit.key,
            dc=True,
            given=string,
            type=type_block,
            type_name=string.module,
            designations=designations,
            **placed_fields(string, make=type_block.make or "", model=type_block.model or string.module),
        )
    )


def _add_optimisers(draft: Draft, string: PvString, place: Place, run: Run) -> str:
    """Add the optimisers of all strings of a group as one device that stands for them."""
    block = string.circuit[0]
    given = merged(block, draft.spec.types.dc_devices.get(block.type or ""))
    assert isinstance(given, Optimiser)
    return add_device(draft, given, place, replace(run, count=string.count * given.units_of(string.modules_in_series)))
