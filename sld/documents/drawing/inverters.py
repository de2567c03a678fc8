"""What the schedules say of an inverter besides the lines at its symbol."""

from __future__ import annotations

from sld.layout.diagram.controllers import feed_in_means
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.model.wording import charging_words
from sld.spec.blocks.backup import BackupOutput
from sld.spec.blocks.data_bus import FeedInLimit
from sld.words import Value, amount, phrase, sequence, unbroken

__all__ = ["backup_words", "direct_current", "inverter_words"]

_EARTH_FAULTS: dict[bool | None, Value] = {
    None: "",
    True: phrase("earth-fault protection of the array"),
    False: phrase("no earth-fault protection of the array"),
}

_NEUTRAL: dict[bool | None, Value] = {None: "", True: phrase("takes a neutral"), False: phrase("takes no neutral")}


def inverter_words(device: InverterUnit, system: System) -> list[Value]:
    """Return what follows the lines at the symbol, the last of which is the power of the backup output."""
    type_, given, leakage_ma = device.type, device.given, device.type.leakage_current_ma
    largest_mm2 = type_.terminal_section_max_mm2
    return [
        *backup_words(type_.backup),
        charging_words(given) or "",
        phrase("DC ≤ {voltage}", voltage=amount(type_.dc_voltage_max_v, "V")),
        phrase(
            "MPP {lowest} to {highest}",
            lowest=amount(type_.mpp_voltage_min_v),
            highest=amount(type_.mpp_voltage_max_v, "V"),
        ),
        phrase("starts at {voltage}", voltage=amount(type_.start_voltage_v, "V")) if type_.start_voltage_v else "",
        _NEUTRAL[type_.needs_neutral],
        direct_current(type_.dc_residual_current_ma),
        phrase("asks for an RCD of its own") if type_.own_residual_device else "",
        phrase("leakage {leakage}", leakage=amount(leakage_ma, "mA")) if leakage_ma is not None else "",
        phrase("backfeed {current}", current=amount(type_.backfeed_current_a, "A")) if type_.backfeed_current_a else "",
        phrase("arc-fault protection") if type_.arc_fault_protection else "",
        _EARTH_FAULTS[type_.ground_fault_protection],
        phrase("cos φ ≥ {factor}", factor=amount(type_.power_factor_min)) if type_.power_factor_min is not None else "",
        phrase("galvanic separation") if type_.galvanic_separation else "",
        phrase("terminals at most {section}", section=amount(largest_mm2, "mm²")) if largest_mm2 is not None else "",
        _feed_in(given.feed_in_limit, system),
    ]


def direct_current(direct_ma: float | None) -> Value:
    """Return the smooth direct current in the protective conductor, nothing where it is not stated."""
    return (
        phrase("smooth DC residual current ≤ {direct}", direct=amount(direct_ma, "mA")) if direct_ma is not None else ""
    )


_SEPARATES: dict[bool | None, Value] = {
    None: "",
    True: phrase("separates all poles"),
    False: phrase("separates the lines alone"),
}


def backup_words(backup: BackupOutput | None) -> list[Value]:
    """Return what an inverter feeds while the network is away, and what it does to the neutral then."""
    if backup is None:
        return []
    fault_a, through_a = backup.short_circuit_current_a, backup.feed_through_current_max_a
    return [
        unbroken("Ik", amount(fault_a, "A")) if fault_a else "",
        phrase("feeds through {current}", current=unbroken("≤", amount(through_a, "A"))) if through_a else "",
        _SEPARATES[backup.separates_neutral],
        phrase("N–PE link while the network is off") if backup.neutral_earth_link else "",
    ]


def _feed_in(limit: FeedInLimit | None, system: System) -> Value:
    if limit is None:
        return ""
    return phrase("feed-in limiter: {means}", means=sequence(feed_in_means(limit, system)))
