"""Overcurrent devices and switches: as specified, or the smallest standard rating for 125 % of the current."""

from __future__ import annotations

from sld.citation import from_memory
from sld.model.device import Apparatus
from sld.model.kinds.role import CARRYING, OVERCURRENT_PROTECTION, RESIDUAL_PROTECTION
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings.nec.overcurrent import smallest_device
from sld.ratings.specified import specified
from sld.ratings.standard_value import smallest_standard
from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ledger
from sld.steps.nec.duty import duty
from sld.steps.protection import load_is_unknown, protective_family, series_device
from sld.steps.unanswered import UNKNOWN_CURRENT, WITHOUT_FUSE
from sld.words import amount, phrase, sequence

__all__ = ["protection"]

_SWITCHES = "nec_switch_a"
_CLAUSE = from_memory("NEC 2023 690.13(E), 705.20, 230.79")


def protection(system: System, ledger: Ledger) -> None:
    """Rate overcurrent devices first, because switches are chosen after them; then the rest."""
    devices = [device for device in system.of(Apparatus) if not device.dc]
    for device in devices:
        if protective_family(device):
            _overcurrent(system, ledger, device)
    for device in devices:
        if (carrying := device.given_as(CARRYING)) is not None:
            _switch(system, ledger, device, carrying.rated_current_a)
        residual = device.given_as(RESIDUAL_PROTECTION)
        if residual is not None and residual.residual_current_ma is not None:
            ledger.add(device.key, specified(Symbol.IDN, residual.residual_current_ma, "mA"))


def _overcurrent(system: System, ledger: Ledger, device: Apparatus) -> None:
    given, design = device.given_as(OVERCURRENT_PROTECTION), ledger.get(device.key, Symbol.IB)
    assert given is not None, "only these are rated here"
    unknown = load_is_unknown(system, ledger, device)
    needed = None
    if design is not None and not unknown:
        needed = duty(system, ledger, device)
        ledger.add(device.key, needed)
    if given.rated_current_a is not None:
        ledger.add(device.key, specified(Symbol.IN, given.rated_current_a, "A"))
    elif needed is not None:
        ledger.attempt(
            device.key, Symbol.IN, lambda: smallest_device(needed), phrase("no rating reaches {needed}", needed=needed)
        )
    else:
        ledger.unanswered(device.key, Symbol.IN, WITHOUT_FUSE if unknown else UNKNOWN_CURRENT)
    ledger.specified(device.key, Symbol.ICN, given.breaking_capacity_ka)


def _switch(system: System, ledger: Ledger, device: Apparatus, given_a: float | None) -> None:
    """Keep the rated current of a switch: at least that of the device in series, and 125 % of the current."""
    ledger.specified(device.key, Symbol.IN, given_a)
    ahead = series_device(system, device)
    rated = ledger.get(ahead.key, Symbol.IN) if ahead else None
    unknown = rated is None and load_is_unknown(system, ledger, device)
    needed = None if unknown else duty(system, ledger, device)
    demands = [needed.as_input()] if needed is not None else []
    if rated is not None and ahead is not None:
        demands.append(Given(f"In({ahead.designation})", rated.value, "A"))
    if not demands:
        if given_a is None:
            ledger.unanswered(device.key, Symbol.IN, WITHOUT_FUSE if unknown else UNKNOWN_CURRENT)
        return
    needed_a = max(demand.number for demand in demands)
    formula = sequence(["max(", sequence(demand.symbol for demand in demands), ")"], "")
    ledger.add(device.key, Rating(Symbol.IN_MIN, needed_a, "A", formula, tuple(demands), _CLAUSE))
    if given_a is not None:
        return
    least = Given("In,min", needed_a, "A")
    ledger.attempt(
        device.key,
        Symbol.IN,
        lambda: smallest_standard(Symbol.IN, _SWITCHES, least, _CLAUSE, phrase("smallest usual In ≥ In,min")),
        phrase("no standard rating reaches {needed}", needed=amount(needed_a, "A", 6)),
    )
