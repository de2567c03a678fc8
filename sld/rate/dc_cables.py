"""DC cables: the current they must carry, what they can carry as laid, their section and voltage drop."""

from __future__ import annotations

from dataclasses import replace

from sld.model.device import Apparatus, Cable, InputTerminal, StringGroup
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.rate.dc_devices import terminal_of
from sld.rate.inputs import groups_behind, joined_groups, joined_strings_count, largest_isc_a
from sld.rate.ledger import Ledger, specified
from sld.ratings import dc_cable
from sld.spec.blocks.circuit import DcCable, DcFuse
from sld.tables.profiles import Profile, profile

__all__ = ["dc_cables"]

_AMBIENT_C = 70.0
_ARRANGEMENT = "two_touching"


def dc_cables(system: System, ledger: Ledger) -> None:
    """Rate every DC cable, then the voltage drop of every input."""
    for cable in system.of(Cable):
        if cable.dc and isinstance(cable.given, DcCable):
            _cable(system, ledger, cable, cable.given)
    for terminal in system.of(InputTerminal):
        _input_drop(system, ledger, terminal)


def _cable(system: System, ledger: Ledger, cable: Cable, given: DcCable) -> None:
    rules = profile(system.profile)
    key = cable.key
    terminal = terminal_of(system, key)
    groups = groups_behind(system, key)
    impp_a = max(group.type.mpp_current_a for group in groups)
    umpp_v = min(group.given.modules_in_series * group.type.mpp_voltage_v for group in groups)
    strings_count = sum(group.given.count for group in groups)
    each_string = len(groups) == 1 and cable.count == groups[0].given.count
    if each_string:
        demand = _string_demand(system, ledger, cable, terminal, groups[0], rules)
        current_a = impp_a
    else:
        demand = _array_demand(system, ledger, cable, terminal, strings_count, rules)
        current_a = impp_a * strings_count
    assumed = [] if given.ambient_temperature_c is not None else [f"{_AMBIENT_C:.0f} °C around DC cables"]
    if given.grouped_circuits == 1:
        assumed.append("DC cables not bunched with other circuits")
    ambient_c = given.ambient_temperature_c if given.ambient_temperature_c is not None else _AMBIENT_C
    ledger.add(key, demand)
    if given.section_mm2 is not None:
        ledger.add(key, specified("S", given.section_mm2, "mm²"))
    else:
        target = rules.dc_drop_advice_percent if rules.dc_drop_advice_percent.is_set else rules.dc_drop_limit_percent
        limit_percent = target.value if target.is_set else 1.0
        ledger.attempt(
            key,
            "S",
            lambda: dc_cable.smallest_section(
                demand.value,
                _ARRANGEMENT,
                ambient_c,
                given.grouped_circuits,
                given.length_m,
                current_a,
                umpp_v,
                limit_percent,
            ),
            f"no standard section carries {demand.quantity()} with at most {limit_percent:g} % voltage drop",
        )
    section = ledger.get(key, "S")
    if section is None:
        return
    ledger.attempt(
        key,
        "Iz",
        lambda: dc_cable.corrected_capacity(section.value, _ARRANGEMENT, ambient_c, given.grouped_circuits).assuming(
            *assumed
        ),
        f"no capacity is tabulated for {section.quantity()} at {ambient_c:g} °C, {given.grouped_circuits} circuits",
    )
    _drop(ledger, cable, given.length_m, current_a, umpp_v, section)


def _string_demand(
    system: System, ledger: Ledger, cable: Cable, terminal: InputTerminal, group: StringGroup, rules: Profile
) -> Rating:
    """Return what the cable of each string must carry: its own current, or what the others send into a fault."""
    joined = joined_groups(system, terminal)
    isc_a = largest_isc_a(ledger, joined)
    fuse_a = _fuse_of(system, ledger, group)
    array_fuse_a = _array_fuse_a(system, ledger, cable) or 0.0
    count = joined_strings_count(system, terminal)
    return dc_cable.string_current_min(count, isc_a, rules, fuse_a, array_fuse_a)


def _array_demand(
    system: System, ledger: Ledger, cable: Cable, terminal: InputTerminal, strings_count: int, rules: Profile
) -> Rating:
    """Return what the cable of several joined strings must carry, with what other inputs can send into it."""
    fuse_a = _array_fuse_a(system, ledger, cable)
    own = {group.key for group in groups_behind(system, terminal.key)}
    others_a = sum(
        group.given.count * (ledger.value(group.key, "Isc,d") or 0.0)
        for group in joined_groups(system, terminal)
        if group.key not in own
    )
    isc_a = largest_isc_a(ledger, groups_behind(system, cable.key))
    if others_a == 0:
        return dc_cable.array_current_min(strings_count, isc_a, rules, fuse_a)
    return dc_cable.sub_array_current_min(strings_count * isc_a, others_a, rules, fuse_a)


def _array_fuse_a(system: System, ledger: Ledger, cable: Cable) -> float | None:
    """Return the rated current of the fuse between a cable and the inverter, other than a string fuse, or None. [A]"""
    for device in system.upstream(cable.key):
        if isinstance(device, InputTerminal):
            return None
        if isinstance(device, Apparatus) and isinstance(device.given, DcFuse) and ".circuit." in device.key:
            return ledger.value(device.key, "In")
    return None


def _drop(ledger: Ledger, cable: Cable, length_m: float, current_a: float, umpp_v: float, section: Rating) -> None:
    resistance = ledger.attempt(
        cable.key,
        "R",
        lambda: dc_cable.resistance(dc_cable.tinned_resistance_20(section.value).value, 90.0).assuming(
            "DC conductor at 90 °C"
        ),
        f"no resistance is tabulated for a solar cable of {section.quantity()}",
    )
    if resistance is not None:
        drop = dc_cable.voltage_drop(length_m, current_a, resistance.value)
        percent = dc_cable.voltage_drop_percent(drop.value, umpp_v).assuming(*resistance.assumptions)
        ledger.add(cable.key, drop, percent)


def _fuse_of(system: System, ledger: Ledger, group: StringGroup) -> float | None:
    """Return the rated current of the fuse of each string of a group, or None."""
    for device in system.upstream(group.key):
        if isinstance(device, Apparatus) and isinstance(device.given, DcFuse) and device.key.startswith(group.key):
            return ledger.value(device.key, "In")
    return None


def _input_drop(system: System, ledger: Ledger, terminal: InputTerminal) -> None:
    """Keep the voltage drop of the worst way from a string to the input."""
    worst: Rating | None = None
    for group in groups_behind(system, terminal.key):
        parts = [
            rating
            for device in system.upstream(group.key)
            if isinstance(device, Cable) and device.dc and (rating := ledger.get(device.key, "Δu")) is not None
        ]
        if not parts:
            continue
        total = sum(part.value for part in parts)
        if worst is None or total > worst.value:
            given = tuple(Given(f"Δu{place}", part.value, "%") for place, part in enumerate(reversed(parts), start=1))
            worst = replace(parts[0], symbol="Δu,dc", value=total, formula="Σ Δu", given=given)
    ledger.add(terminal.key, worst)
