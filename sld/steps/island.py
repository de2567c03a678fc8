"""What the sources feed and the loads draw while the public network is away."""

from __future__ import annotations

from sld.citation import cited
from sld.model.conductors import phases
from sld.model.device import Apparatus, BatteryUnit, GeneratorUnit, InverterUnit
from sld.model.island import Island, islands
from sld.model.kinds.role import TRIPPING
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings.breaker import instantaneous_tripping_current
from sld.ratings.inverter import design_current
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ledger
from sld.words import phrase

__all__ = ["island_currents"]

_CLAUSE = cited(phrase("common practice: no diversity between sources"), phrase("loads at their highest current"))


def island_currents(system: System, ledger: Ledger) -> None:
    """Keep the fault current of each source as given, and for each island what is fed and drawn."""
    for generator in system.of(GeneratorUnit):
        ledger.add(generator.key, _trips_at_the_set(system, generator), symbol=Symbol.IA)
        ledger.specified(generator.key, Symbol.IK_ISLAND, generator.given.short_circuit_current_a)
    for island in islands(system):
        for source in island.sources:
            _, current_a = _feeds(source)
            if current_a is not None:
                ledger.add(source.key, specified(Symbol.IK_ISLAND, current_a, "A"))
        if isinstance(island.switch, InverterUnit) and island.switch.type.backup is not None:
            through_a = island.switch.type.backup.feed_through_current_max_a
            if through_a is not None:
                ledger.add(island.switch.key, specified(Symbol.I_THROUGH, through_a, "A"))
        ledger.add(island.root, _drawn(system, ledger, island), _fed(system, island))


def _trips_at_the_set(system: System, generator: GeneratorUnit) -> Rating | None:
    """Return what trips the circuit-breaker between a generator and its first cable at once, None if not known."""
    for device in system.upstream(generator.key):
        trips = device.given_as(TRIPPING)
        if not isinstance(device, Apparatus) or device.owner != generator.key:
            return None
        if trips is not None and trips.curve is not None and trips.rated_current_a is not None:
            return instantaneous_tripping_current(trips.curve, trips.rated_current_a)
    return None


def _feeds(source: InverterUnit | GeneratorUnit | BatteryUnit) -> tuple[float | None, float | None]:
    """Return what a source feeds while the public network is away, and its highest current into a fault. [VA, A]

    None where nobody says it.
    """
    if isinstance(source, GeneratorUnit):
        return source.given.power_va, source.given.short_circuit_current_a
    if isinstance(source, BatteryUnit):
        return source.given.backup_power_va, source.given.backup_short_circuit_current_a
    backup = source.type.backup
    return (backup.power_va, backup.short_circuit_current_a) if backup else (None, None)


def _drawn(system: System, ledger: Ledger, island: Island) -> Rating | None:
    """Return the sum of the currents of the loads, all on one line where one of them is single-phase."""
    known = [
        (load, current) for load in island.loads(system) if (current := ledger.value(load.key, Symbol.IB)) is not None
    ]
    if not known:
        return None
    given = tuple(Given(f"Ib({load.designation})", current, "A") for load, current in known)
    return Rating(Symbol.I_ISLAND, sum(current for _, current in known), "A", "Σ Ib", given, _CLAUSE)


def _fed(system: System, island: Island) -> Rating | None:
    """Return the sum of the currents that the sources feed, by their apparent power."""
    parts = []
    for source in island.sources:
        phase_count = phases(system, source.key)
        volts = system.voltage_v if phase_count == 3 else system.voltage_of_one_phase_v
        backup_va, _ = _feeds(source)
        if backup_va is None:
            return None
        parts.append(Given(f"S({source.designation})", design_current(phase_count, volts, backup_va, None).value, "A"))
    if not parts:
        return None
    return Rating(Symbol.I_ISLAND_MAX, sum(each.number for each in parts), "A", "Σ S / U", tuple(parts), _CLAUSE)
