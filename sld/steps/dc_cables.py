"""DC cables: the current they must carry, what they can carry as laid, their section and voltage drop."""

from __future__ import annotations

from sld.frozen import dataclass, replace
from sld.model.device import Apparatus, Cable, InputTerminal, StringGroup
from sld.model.kinds.role import OVERCURRENT_PROTECTION
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings import dc_cable, dc_section
from sld.ratings.dc_section import ByMethod, Drop, FreeAir
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import DcCable
from sld.steps.dc_devices import protects_array, terminal_of
from sld.steps.dc_laid import laid
from sld.steps.inputs import groups_behind, joined_groups, largest_isc_a, strings_count
from sld.steps.ledger import Ledger
from sld.steps.optimisers import operating_point
from sld.tables.profiles import Profile, profile
from sld.tables.table import NoRow
from sld.words import amount, phrase

__all__ = ["dc_cables", "input_drops"]


def dc_cables(system: System, ledger: Ledger) -> None:
    """Rate every DC cable, then the voltage drop of every input."""
    for cable, given in system.dc_cables():
        _cable(system, ledger, cable, given)
    input_drops(system, ledger)


def input_drops(system: System, ledger: Ledger) -> None:
    """Rate the voltage drop of every input: that of the worst way from a string."""
    for terminal in system.of(InputTerminal):
        _input_drop(system, ledger, terminal)
    for group in system.of(StringGroup):
        _at_the_inverter(system, ledger, group)


@dataclass(frozen=True, slots=True)
class _Carried:
    """What a cable carries: the demand on its capacity, MPP current in A and MPP voltage at STC in V."""

    demand: Rating
    impp_a: float
    umpp_v: float


def _carried(system: System, ledger: Ledger, cable: Cable, rules: Profile) -> _Carried:
    terminal = terminal_of(system, cable.key)
    groups = groups_behind(system, cable.key)
    points = [operating_point(system, group) for group in groups]
    impp_a, umpp_v = max(amperes for _, amperes in points), min(volts for volts, _ in points)
    through_count = strings_count(groups)
    if len(groups) == 1 and cable.count == groups[0].given.count:
        demand, through_count = _string_demand(system, ledger, cable, terminal, groups[0], rules), 1
    else:
        demand = _array_demand(system, ledger, cable, terminal, through_count, rules)
    return _Carried(demand, impp_a * through_count, umpp_v)


def _cable(system: System, ledger: Ledger, cable: Cable, given: DcCable) -> None:
    key, carried = cable.key, _carried(system, ledger, cable, profile(system.profile))
    ledger.add(key, carried.demand)
    ledger.specified(key, Symbol.S, given.section_mm2)
    try:
        how = laid(system, cable, given)
    except NoRow:
        ledger.unanswered(key, Symbol.IZ, phrase("no correction factor is tabulated for how it is laid"))
        return
    if given.section_mm2 is None:
        _choose(system, ledger, cable, given, how.design, carried)
    section = ledger.get(key, Symbol.S)
    if section is None:
        return
    ledger.attempt(
        key,
        Symbol.IZ,
        lambda: dc_section.capacity(how.design, section.value).assuming(*how.said),
        phrase(
            "no capacity is tabulated for {section} at {ambient}, {circuits} circuits",
            section=section,
            ambient=amount(how.ambient_c, "°C", 6),
            circuits=how.circuits_count,
        ),
    )
    _drop(ledger, cable, how.design, given.length_m, carried, section)


def _choose(
    system: System, ledger: Ledger, cable: Cable, given: DcCable, how: FreeAir | ByMethod, carried: _Carried
) -> None:
    """Choose the smallest section that carries the current and keeps the target of the voltage drop."""
    rules = profile(system.profile)
    target = rules.dc_drop_advice_percent if rules.dc_drop_advice_percent.is_set else rules.dc_drop_limit_percent
    drop = Drop(given.length_m, carried.impp_a, carried.umpp_v, target.value if target.is_set else 1.0)
    ledger.attempt(
        cable.key,
        Symbol.S,
        lambda: dc_section.smallest_section(how, carried.demand.value, drop),
        phrase(
            "no standard section carries {demand} with at most {limit} voltage drop",
            demand=carried.demand,
            limit=amount(drop.limit_percent, "%", 6),
        ),
    )


def _string_demand(
    system: System, ledger: Ledger, cable: Cable, terminal: InputTerminal, group: StringGroup, rules: Profile
) -> Rating:
    """Return what the cable of each string must carry: its own current, or what the others send into a fault."""
    joined = joined_groups(system, terminal)
    isc_a = largest_isc_a(ledger, joined)
    fuse_a = _fuse_of(system, ledger, group)
    array_fuse_a = _array_fuse_a(system, ledger, cable) or 0.0
    count = strings_count(joined)
    backfeed_a = system.inverter_of(terminal).type.backfeed_current_a
    together = terminal.given.strings_per_fuse
    if fuse_a is not None and together > 1:
        # the strings ahead of one fuse feed each other, and what comes through the fuse adds to it
        return dc_cable.string_current_min(together, isc_a, rules, None, fuse_a)
    return dc_cable.string_current_min(count, isc_a, rules, fuse_a, array_fuse_a, backfeed_a)


def _array_demand(
    system: System, ledger: Ledger, cable: Cable, terminal: InputTerminal, through_count: int, rules: Profile
) -> Rating:
    """Return what the cable of several joined strings must carry, with what other inputs can send into it."""
    fuse_a = _array_fuse_a(system, ledger, cable)
    own = {group.key for group in groups_behind(system, terminal.key)}
    others_a = sum(
        group.given.count * (ledger.value(group.key, Symbol.ISC_D) or 0.0)
        for group in joined_groups(system, terminal)
        if group.key not in own
    )
    isc_a = largest_isc_a(ledger, groups_behind(system, cable.key))
    backfeed_a = 0.0 if fuse_a else system.inverter_of(terminal).type.backfeed_current_a
    if others_a == 0:
        return dc_cable.array_current_min(through_count, isc_a, rules, fuse_a, backfeed_a)
    return dc_cable.sub_array_current_min(through_count * isc_a, others_a, rules, fuse_a, backfeed_a)


def _array_fuse_a(system: System, ledger: Ledger, cable: Cable) -> float | None:
    """Return the rated current of the fuse between a cable and the inverter, other than a string fuse, or None. [A]"""
    for device in system.upstream(cable.key):
        if isinstance(device, InputTerminal):
            return None
        if isinstance(device, Apparatus) and protects_array(device):
            return ledger.value(device.key, Symbol.IN)
    return None


def _drop(
    ledger: Ledger, cable: Cable, how: FreeAir | ByMethod, length_m: float, carried: _Carried, section: Rating
) -> None:
    hot = phrase("DC conductor at {temperature}", temperature=amount(how.t_loaded_c, "°C", 6))
    resistance = ledger.attempt(
        cable.key,
        Symbol.R,
        lambda: dc_section.hot_resistance(how, section.value).assuming(hot),
        phrase("no resistance is tabulated for {cable} of {section}", cable=cable.marking, section=section),
    )
    if resistance is not None:
        drop = dc_cable.voltage_drop(length_m, carried.impp_a, resistance.value)
        percent = dc_cable.voltage_drop_percent(drop.value, carried.umpp_v).assuming(*resistance.assumptions)
        ledger.add(cable.key, drop, percent)


def _fuse_of(system: System, ledger: Ledger, group: StringGroup) -> float | None:
    """Return the rated current of the fuse of each string of a group, or None."""
    for device in system.upstream(group.key):
        if isinstance(device, Apparatus) and device.has(OVERCURRENT_PROTECTION) and device.key.startswith(group.key):
            return ledger.value(device.key, Symbol.IN)
    return None


def _input_drop(system: System, ledger: Ledger, terminal: InputTerminal) -> None:
    """Keep the voltage drop of the worst way from a string to the input."""
    worst: Rating | None = None
    for group in groups_behind(system, terminal.key):
        parts = [
            rating
            for device in system.upstream(group.key)
            if isinstance(device, Cable)
            and device.dc
            and (rating := ledger.get(device.key, Symbol.DU_DC_CABLE)) is not None
        ]
        if not parts:
            continue
        total = sum(part.value for part in parts)
        if worst is None or total > worst.value:
            given = tuple(Given(f"Δu{place}", part.value, "%") for place, part in enumerate(reversed(parts), start=1))
            worst = replace(parts[0], symbol=Symbol.DU_DC, value=total, formula="Σ Δu", given=given)
    ledger.add(terminal.key, worst)


def _at_the_inverter(system: System, ledger: Ledger, group: StringGroup) -> None:
    """Keep the lowest MPP voltage as the inverter sees it: that of the string less the drop along its cables."""
    lowest = ledger[group.key, Symbol.UMPP_MIN]
    drops = [
        rating.value
        for device in system.upstream(group.key)
        if isinstance(device, Cable) and device.dc and (rating := ledger.get(device.key, Symbol.DU_DC_V)) is not None
    ]
    ledger.add(group.key, dc_cable.umpp_at_inverter(lowest, sum(drops)))
