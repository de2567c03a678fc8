"""Boards and meters: what the busbar carries, what the meter must stand."""

from __future__ import annotations

from sld.model.device import Apparatus, Busbar
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.rate.ledger import Ledger, specified
from sld.rate.protection import overcurrent_device
from sld.ratings import board, meter
from sld.spec.blocks.circuit import Meter

__all__ = ["supply_side"]


def supply_side(system: System, ledger: Ledger) -> None:
    """Rate every busbar and meter."""
    for busbar in system.of(Busbar):
        _busbar(system, ledger, busbar)
    for device in system.of(Apparatus):
        if isinstance(device.given, Meter):
            _meter(system, ledger, device, device.given)


def _incomer_a(system: System, ledger: Ledger, key: str) -> float | None:
    """Return the rated current of the overcurrent device that feeds a point, None where there is none. [A]"""
    device = overcurrent_device(system, key)
    return ledger.value(device.key, "In") if device else None


def _busbar(system: System, ledger: Ledger, busbar: Busbar) -> None:
    incomer_a = _incomer_a(system, ledger, busbar.key)
    if incomer_a is None:
        incomer_a = ledger.value(busbar.key, "Ib")
    if incomer_a is None:
        ledger.unanswered(busbar.key, "InA", "nothing says what current flows here")
        return
    exported_a = ledger.value(busbar.key, "Iexport") or 0.0
    needed = board.busbar_load(incomer_a, [exported_a] if exported_a else [])
    ledger.add(busbar.key, needed)
    if busbar.given.rated_current_a is not None:
        ledger.add(busbar.key, specified("InA", busbar.given.rated_current_a, "A"))
    else:
        ledger.attempt(
            busbar.key,
            "InA",
            lambda: board.standard_assembly_current(needed.value),
            f"no common assembly rating reaches {needed.quantity()}",
        )


def _meter(system: System, ledger: Ledger, device: Apparatus, given: Meter) -> None:
    design = ledger.get(device.key, "Ib")
    exported_a = ledger.value(device.key, "Iexport") or 0.0
    main_a = _incomer_a(system, ledger, device.key) or (design.value if design else None)
    if main_a is None:
        ledger.unanswered(device.key, "Im", "nothing says what current flows here")
        return
    if given.purpose == "generation" and design is not None:
        main_a = design.value
    if exported_a:
        needed = meter.metered_current(main_a, exported_a)
    else:
        given_main = (Given("In", main_a, "A", "main device"),)
        needed = Rating("Im", main_a, "A", "In", given_main, "IEC 62053-21; EN 50470-3 (from memory)")
    ledger.add(device.key, needed)
    if given.connection == "direct":
        if given.current_max_a is not None:
            ledger.add(device.key, specified("Imax", given.current_max_a, "A"))
        else:
            ledger.attempt(
                device.key,
                "Imax",
                lambda: meter.direct_meter_current(needed.value),
                f"no direct meter stands {needed.quantity()}: current transformers are needed",
            )
        return
    if given.ct_primary_a is not None:
        ledger.add(device.key, specified("Ipn", given.ct_primary_a, "A"))
    else:
        ledger.attempt(
            device.key,
            "Ipn",
            lambda: meter.transformer_primary(needed.value),
            f"no standard current transformer reaches {needed.quantity()}",
        )
    primary = ledger.get(device.key, "Ipn")
    if primary is not None:
        ledger.add(device.key, specified("Isn", given.ct_secondary_a or 5.0, "A"))
        ledger.add(device.key, meter.transformer_ratio(primary.value, given.ct_secondary_a or 5.0))
