"""Strings with power optimisers: what takes the place of the voltages and currents of their modules."""

from __future__ import annotations

from collections.abc import Sequence

from sld.citation import cited
from sld.frozen import replace
from sld.model.device import StringGroup
from sld.model.kinds.dc import OPTIMISER
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings import optimiser as formulas
from sld.ratings.specified import specified
from sld.ratings.symbol import Symbol
from sld.spec.blocks.optimiser import Optimiser
from sld.steps.ledger import Ledger
from sld.tables.profiles import Profile, profile
from sld.words import phrase

__all__ = ["operating_point", "optimised", "optimiser_of", "rules_of"]


def optimiser_of(system: System, group: StringGroup) -> Optimiser | None:
    """Return the optimisers of each string of a group, None where there are none."""
    return system.devices[group.parent].given_as(OPTIMISER)


def optimised(ledger: Ledger, group: StringGroup, given: Optimiser, of_input: Rating) -> None:
    """Keep the ratings of a string with optimisers in place of those of its modules.

    of_input: highest voltage of the modules of one unit, cold. Where the spec leaves a limit of the units out, the
    value of the modules stays, and a rule tells that it is missing.
    """
    units = formulas.units_count(group.given.modules_in_series, given.modules_per_unit)
    ledger.add(group.key, units, replace(of_input, symbol=Symbol.UOC_UNIT))
    if given.output_voltage_max_v is not None or given.string_voltage_max_v is not None:
        highest = formulas.string_voltage_max(units, given.output_voltage_max_v or 0.0, given.string_voltage_max_v)
        ledger.add(group.key, highest)
    if given.string_voltage_v is not None:
        for symbol in (Symbol.UMPP_MIN, Symbol.UMPP_MAX, Symbol.UOC_HOT):
            ledger.add(group.key, specified(symbol, given.string_voltage_v, "V"))
    if given.output_current_max_a is not None:
        ledger.add(group.key, specified(Symbol.ISC_D, given.output_current_max_a, "A"))


def operating_point(system: System, group: StringGroup) -> tuple[float, float]:
    """Return voltage and current of one string of a group at STC: of its modules, or as optimisers hold it. [V, A]"""
    count, type_, given = group.given.modules_in_series, group.type, optimiser_of(system, group)
    if given is None or given.string_voltage_v is None or given.output_current_max_a is None:
        return count * type_.mpp_voltage_v, type_.mpp_current_a
    current_a = formulas.operating_current(
        count * type_.rated_power_w, given.string_voltage_v, given.output_current_max_a
    )
    return given.string_voltage_v, current_a


def rules_of(system: System, groups: Sequence[StringGroup]) -> Profile:
    """Return the rule profile for strings: without the factor KI where optimisers limit the current of all of them."""
    rules = profile(system.profile)
    given = [optimiser_of(system, group) for group in groups]
    if not all(each is not None and each.output_current_max_a is not None for each in given):
        return rules
    sheet = phrase("data sheet of the optimiser")
    return replace(rules, isc_factor=replace(rules.isc_factor, text="1", clause=sheet, reference=cited(sheet)))
