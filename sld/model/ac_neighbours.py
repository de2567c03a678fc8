"""What a board serves besides inverters: batteries with a converter of their own, loads, generators."""

from __future__ import annotations

from collections.abc import Sequence

from sld.frozen import replace
from sld.model.battery_side import add_cells
from sld.model.circuit import Run, ac_circuit, placed_fields
from sld.model.device import BatteryUnit, Consumer, Device, GeneratorUnit
from sld.model.draft import Draft
from sld.model.kinds.units import BATTERY, BATTERY_CONVERTER, CHARGING_POINT, GENERATOR, LOAD
from sld.spec.blocks.battery import Battery
from sld.spec.blocks.circuit import AcDevice, Breaker
from sld.spec.island_references import second_sources
from sld.words import Phrase, phrase

__all__ = ["GIVE_CIRCUIT", "add_generator", "add_neighbours"]

GIVE_CIRCUIT: Phrase = phrase("give its `circuit`")
"""What to do where the circuit of something is assumed."""


def add_neighbours(draft: Draft, board: str, key: str) -> None:
    """Add the batteries with a converter of their own, the loads and the generators of a board."""
    for name, battery in draft.spec.batteries.items():
        if battery.inverter is None and (battery.connected_to or draft.main) == board:
            _add_battery(draft, name, battery, key)
    for name, load in draft.spec.loads.items():
        if (load.connected_to or draft.main) == board:
            consumer = Consumer(
                key=f"loads.{name}",
                designation=draft.owners["loads", name],
                kind=CHARGING_POINT if load.charging_point else LOAD,
                at=("loads", name),
                given=load,
                **placed_fields(load),
            )
            _add_served(draft, consumer, load.circuit, key, key)

    switched = {source for _, source in second_sources(draft.spec)}
    for name, generator in draft.spec.generators.items():
        if name not in switched and (generator.connected_to or draft.main) == board:
            add_generator(draft, name, key, key)


def add_generator(draft: Draft, name: str, parent: str, board: str) -> None:
    """Add a generator at a board, or at the change-over switch that it is the second source of."""
    generator, key = draft.spec.generators[name], f"generators.{name}"
    source = GeneratorUnit(
        key=key,
        designation=draft.owners["generators", name],
        kind=GENERATOR,
        at=("generators", name),
        given=generator,
        **placed_fields(generator),
    )
    what = phrase(
        "generator `{generator}` runs only while the network is separated; its fault currents are not computed",
        generator=name,
    )
    draft.assume(source.at, key, what, phrase("have its protection worked out with the maker's data"))
    _add_served(draft, source, generator.circuit, parent, board)


def _add_battery(draft: Draft, name: str, battery: Battery, board: str) -> None:
    """Add a battery with its converter as one, or both apart where the spec gives the circuit between them."""
    own, apart = draft.owners["batteries", name], battery.dc_circuit is not None
    unit = BatteryUnit(
        key=f"batteries.{name}",
        designation=draft.designator.next(own, BATTERY_CONVERTER) if apart else own,
        kind=BATTERY_CONVERTER if apart else BATTERY,
        at=("batteries", name),
        given=battery,
        **placed_fields(battery),
    )
    _add_served(draft, unit, battery.circuit, board, board)
    if apart:
        add_cells(draft, name, battery, unit.key)


def _add_served(draft: Draft, device: Device, circuit: Sequence[AcDevice] | None, parent: str, board: str) -> None:
    """Add a device behind its circuit; a circuit-breaker is assumed where none is given.

    parent: what the circuit hangs on. board: that its devices ahead of the first cable sit in.
    """
    run = Run(device.key, assumed=circuit is None, status=device.status)
    if circuit is None:
        circuit = [Breaker(kind="breaker")]
        what = phrase("a circuit-breaker for `{device}`", device=str(device.at[-1]))
        draft.assume(device.at, device.key, what, GIVE_CIRCUIT)
    last = ac_circuit(draft, circuit, parent, device.at, run, (board, ""))
    draft.add(replace(device, parent=last, owner=device.key))
