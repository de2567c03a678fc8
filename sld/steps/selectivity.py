"""Selectivity of protective devices in series: overcurrent devices from circuit to circuit, RCDs by ratio."""

from __future__ import annotations

from collections.abc import Iterator

from sld.citation import cited
from sld.model.device import Apparatus, GeneratorUnit
from sld.model.kinds.role import RESIDUAL_PROTECTION
from sld.model.system import System
from sld.ratings.selectivity import Protection, overload_shortfall, residual_ratio, selectivity_limit
from sld.ratings.symbol import Symbol, Word
from sld.steps.ledger import Ledger
from sld.steps.loops import magnetic_trip_factor
from sld.steps.protection import overcurrent_device, protective_family, tripping_curve
from sld.steps.releases import release_of
from sld.tables.table import NoRow
from sld.words import phrase

__all__ = ["residual_device_ahead", "selectivity"]


def selectivity(system: System, ledger: Ledger) -> None:
    """Keep up to which current each overcurrent device opens alone, and the ratio of each RCD to the one ahead."""
    for device in system.of(Apparatus):
        ahead = overcurrent_device(system, device.key)
        of_generator = isinstance(system.devices.get(device.owner), GeneratorUnit)
        if protective_family(device) and ahead is not None and ahead.owner != device.owner and not of_generator:
            _overcurrent(ledger, device, ahead)
    for device, ahead in _residual_pairs(system):
        here, up = ledger.value(device.key, Symbol.IDN), ledger.value(ahead.key, Symbol.IDN)
        if here is not None and up is not None:
            ledger.add(device.key, residual_ratio(up, here))


def _overcurrent(ledger: Ledger, device: Apparatus, ahead: Apparatus) -> None:
    down, up = _protection(ledger, device), _protection(ledger, ahead)
    if down is None or up is None:
        return
    try:
        why = overload_shortfall(up, down)
        limit = None if why else selectivity_limit(up, down, ledger.value(device.key, Symbol.IK_MAX))
    except NoRow:
        return
    if limit is not None:
        ledger.add(device.key, limit)
    else:
        ledger.word(
            device.key,
            Word.NO_SELECTIVITY,
            why or phrase("a short circuit may trip both at once"),
            cited("IEC 60364-5-53 536"),
        )


def _protection(ledger: Ledger, device: Apparatus) -> Protection | None:
    """Return a device as the formulas take it, None where its rated current or curve is not known."""
    family, rated = protective_family(device), ledger.value(device.key, Symbol.IN)
    curve = tripping_curve(ledger, device)
    if rated is None or (family == "MCB" and not curve):
        return None
    release = release_of(device)
    set_by_current = release if release is not None and release.sees_short_circuits else None
    factor = magnetic_trip_factor(device) if family == "MCCB" else None
    return Protection(family, rated, curve, factor, set_by_current)


def residual_device_ahead(system: System, device: Apparatus) -> Apparatus | None:
    """Return the nearest RCD or RCBO upstream of a device."""
    for other in system.upstream(device.key):
        if isinstance(other, Apparatus) and other.has(RESIDUAL_PROTECTION):
            return other
    return None


def _residual_pairs(system: System) -> Iterator[tuple[Apparatus, Apparatus]]:
    for device in system.apparatus(RESIDUAL_PROTECTION):
        ahead = residual_device_ahead(system, device)
        if ahead is not None:
            yield device, ahead
