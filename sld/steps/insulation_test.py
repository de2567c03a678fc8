"""The insulation test of the DC side, by input: its strings are tested apart from the inverter."""

from __future__ import annotations

from sld.model.device import Cable, InputTerminal
from sld.model.kinds.dc import DC_CABLE
from sld.model.planned import without_planned
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings import insulation
from sld.ratings.symbol import Symbol
from sld.steps.inputs import groups_behind
from sld.steps.ledger import Ledger
from sld.steps.unanswered import Unanswered, Why
from sld.words import amount, phrase

__all__ = ["insulation_test"]


def insulation_test(system: System, ledger: Ledger) -> None:
    """Rate the test of the strings of every input; the highest one is kept for the whole system too."""
    for terminal in system.of(InputTerminal):
        _of_input(system, ledger, terminal)
    built = without_planned(system, system.of(InputTerminal))
    for symbol in (Symbol.UTEST, Symbol.RISO_MIN):
        found = [rating for each in built if (rating := ledger.get(each.key, symbol)) is not None]
        if found:
            ledger.add("", max(found, key=_value))
    ledger.add("", insulation.group_power_max())


def _value(rating: Rating) -> float:
    return rating.value


def _of_input(system: System, ledger: Ledger, terminal: InputTerminal) -> None:
    strings = groups_behind(system, terminal.key)
    stc_v = max(each.given.modules_in_series * each.type.open_circuit_voltage_v for each in strings)
    limit_v = _tested_limit_v(system, terminal)
    none = phrase("IEC 62446-1 has no test voltage up to the {limit} of module or cable", limit=amount(limit_v, "V"))
    why = Unanswered(
        none, Why.FOLLOWS
    )  # modules and cables of less than the lowest test voltage are told by DC02, DC23
    ledger.attempt(terminal.key, Symbol.UTEST, lambda: insulation.voltage_at_test(stc_v, limit_v), why)
    ledger.add(terminal.key, insulation.resistance_min_at_test(stc_v))


def _tested_limit_v(system: System, terminal: InputTerminal) -> float:
    """Return the lowest rated voltage of what is tested and cannot be taken off: modules and cables. [V]"""
    modules = [each.type.system_voltage_max_v for each in groups_behind(system, terminal.key)]
    cables = [
        each.type.rated_voltage_v
        for each in system.downstream(terminal.key)
        if isinstance(each, Cable) and each.has(DC_CABLE) and each.type.rated_voltage_v is not None
    ]
    return min([*modules, *cables])
