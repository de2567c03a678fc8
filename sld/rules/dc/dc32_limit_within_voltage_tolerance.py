"""Voltage limit within the tolerance of the modules.

What it checks
    The highest voltage of each string, with the tolerance that the maker states for Uoc, against the limits of inverter
    and modules.

Why
    A module may have more than its rated voltage by the tolerance on its label, often 3 %.

How
    Uoc,max is within the limit, and Uoc,tol = Uoc,max · (1 + tolerance) is above it.

Remedy
    One module fewer in series, or measured voltages of the modules.

Clause
    Data sheet of the module; IEC 62548:2016 7.2 (from memory).

Not covered
    Module types whose tolerance is not given, and strings that are above the limit without it (DC01, DC02).
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import StringGroup
from sld.model.system import System
from sld.quantity import shown
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC32", "voltage limit within the tolerance of the modules", Severity.ADVICE, "data of the module; IEC 62548-1")
def limit_within_voltage_tolerance(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for group in system.of(StringGroup):
        highest, tolerant = ratings[group.key, Symbol.UOC_MAX], ratings.get(group.key, Symbol.UOC_TOL)
        if tolerant is None:
            continue
        limit_v = min(system.inverter_of(group).type.dc_voltage_max_v, group.type.system_voltage_max_v)
        if above(highest.value, limit_v) or not above(tolerant.value, limit_v):
            continue
        reached, limit = two(tolerant.value, limit_v, "V")
        percent = shown(tolerant.number("t"))
        yield Breach(
            phrase(
                "{group} reaches {reached} with modules {percent} % above their rated voltage, and the limit "
                "is {limit}",
                group=named(group),
                reached=reached,
                percent=percent,
                limit=limit,
            ),
            phrase("use one module fewer in series, or measure the modules"),
            (*group.at, "modules_in_series"),
            group.key,
            ((("types", "modules", group.type_name, "voltage_tolerance"), phrase("tolerance of the module")),),
            (highest, tolerant),
        )
