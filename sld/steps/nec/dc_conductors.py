"""DC conductors: 156 % of Isc before corrections, 125 % after them, and the fuse or the other strings ahead."""

from __future__ import annotations

from sld.frozen import replace
from sld.model.device import Apparatus, Cable, InputTerminal
from sld.model.kinds.role import OVERCURRENT_PROTECTION
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import dc_cable
from sld.ratings.nec.conductor import resistance
from sld.ratings.nec.conductor_size import CONDUCTOR_C, Demand, Run, VoltageLimit, smallest_size
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import DcCable
from sld.steps.dc_cables import input_drops
from sld.steps.dc_devices import protects_string, terminal_of
from sld.steps.inputs import groups_behind, joined_groups, largest_isc_a, strings_count
from sld.steps.ledger import Ledger
from sld.steps.nec.runs import NO_FACTOR, keep_ampacity, run_of
from sld.steps.optimisers import operating_point
from sld.tables.profiles import profile
from sld.words import amount, phrase

__all__ = ["dc_conductors"]


def dc_conductors(system: System, ledger: Ledger) -> None:
    """Rate every DC cable, then the voltage drop of every input."""
    for cable, given in system.dc_cables():
        _cable(system, ledger, cable, given)
    input_drops(system, ledger)


def _cable(system: System, ledger: Ledger, cable: Cable, given: DcCable) -> None:
    rules, groups = profile(system.profile), groups_behind(system, cable.key)
    points = [operating_point(system, group) for group in groups]
    impp_a, umpp_v = max(amperes for _, amperes in points), min(volts for volts, _ in points)
    each_string = len(groups) == 1 and cable.count == groups[0].given.count
    through_count = 1 if each_string else strings_count(groups)
    demand = _demand(system, ledger, cable, through_count)
    run, said = run_of(system, ledger, cable, demand.continuous_a)
    current_a = impp_a * through_count
    if given.section_mm2 is not None:
        ledger.add(cable.key, specified(Symbol.S, given.section_mm2, "mm²"))
    elif run is None:
        ledger.unanswered(cable.key, Symbol.S, NO_FACTOR)
    else:
        limit_percent = rules.dc_drop_advice_percent.value
        limit = VoltageLimit(1, current_a, given.length_m, umpp_v, limit_percent)
        why = phrase(
            "no conductor size carries {current} with at most {limit} voltage drop",
            current=amount(demand.current_a, "A"),
            limit=amount(limit_percent, "%", 6),
        )
        ledger.attempt(cable.key, Symbol.S, lambda: smallest_size(run, demand, (limit,)), why)
    if run is None:
        return
    size = keep_ampacity(ledger, cable, run, said, demand)
    limit_a = ledger.get(cable.key, Symbol.I_TERMINAL)
    if limit_a is not None:
        ledger.add(cable.key, replace(limit_a, symbol=Symbol.IT))
    if size:
        _drop(ledger, cable, run, size, (given.length_m, current_a, umpp_v))


def _demand(system: System, ledger: Ledger, cable: Cable, through_count: int) -> Demand:
    """Keep and return what a cable must carry.

    Without a fuse between, a fault in a string draws the current of all the others: the conductors carry that too
    (690.9(A)(1)). Where several strings share a fuse it draws their current and what the fuse lets through.
    """
    rules = profile(system.profile)
    terminal = terminal_of(system, cable.key)
    isc_a = largest_isc_a(ledger, groups_behind(system, cable.key))
    before = dc_cable.uncorrected_current_min(through_count, isc_a, rules)
    assert before is not None, "the profile has a factor for the ampacity before corrections"
    ledger.add(cable.key, before)
    factor = rules.cable_current_factor
    after_a = factor.value * through_count * isc_a
    fuse, shared_by_count = _fuse(system, cable), terminal.given.strings_per_fuse
    device_a = ledger.value(fuse.key, Symbol.IN) if fuse else None
    if fuse is None or device_a is None:
        others_count = strings_count(joined_groups(system, terminal)) - through_count
        through_device_a = system.inverter_of(terminal).type.backfeed_current_a
    else:
        behind = strings_count(groups_behind(system, fuse.key))
        behind = shared_by_count if protects_string(system, fuse) else behind
        others_count = max(0, behind - through_count)
        through_device_a = device_a if others_count else 0.0
    reverse_a = factor.value * others_count * isc_a + through_device_a
    given = (
        Given("f", factor.value, "", rules.said),
        Given("Np", through_count, "", phrase("through it")),
        Given("Np,others", others_count, "", phrase("that feed a fault in it")),
        Given("Isc", isc_a, "A"),
        Given("Ifed", through_device_a, "A", phrase("what the fuse ahead or the inverter lets through")),
    )
    value = max(after_a, reverse_a)
    formula = "max(f · Np · Isc, f · Np,others · Isc + Ifed)"
    ledger.add(cable.key, Rating(Symbol.IZ_MIN, value, "A", formula, given, factor.cited, factor.reference))
    return Demand(before.value, value, device_a)


def _fuse(system: System, cable: Cable) -> Apparatus | None:
    """Return the first fuse between a cable and the inverter, None where there is none."""
    for device in system.upstream(cable.key):
        if isinstance(device, InputTerminal):
            return None
        if isinstance(device, Apparatus) and device.has(OVERCURRENT_PROTECTION):
            return device
    return None


def _drop(ledger: Ledger, cable: Cable, run: Run, size: str, way: tuple[float, float, float]) -> None:
    length_m, current_a, umpp_v = way
    r = ledger.attempt(
        cable.key,
        Symbol.R,
        lambda: resistance(run.material, size, CONDUCTOR_C),
        phrase("no resistance is tabulated for size {size} {material}", size=size, material=run.material),
    )
    if r is None:
        return
    drop = dc_cable.voltage_drop(length_m, current_a, r.value)
    percent = dc_cable.voltage_drop_percent(drop.value, umpp_v)
    ledger.add(cable.key, drop, replace(percent, assumptions=(phrase("DC conductor at 75 °C"),)))
