"""Rating that cannot be answered.

What it checks
    Ratings that no table and no standard size answers, and that no other rule tells.

Why
    What depends on the rating is not checked.

How
    The rating was tried and kept its reason. Advice where the spec alone is silent, for example on the power of a
    load or the service fuse; non-compliance where no value exists.

Remedy
    A value of the table, or the missing value in the spec.

Clause
    The table or series named in the message.

Not covered
    Ratings that were not tried because an earlier one is missing.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.naming import designation_of, named
from sld.rules.ways import ac_cables
from sld.steps.ledger import Ratings
from sld.steps.unanswered import Why
from sld.words import phrase

_TOLD_ELSEWHERE = (Symbol.IN_STRING, Symbol.IA)  # DC15, FA08
_TOLD_OF_ITSELF = (Why.NO_CORE, Why.FOLLOWS)  # AC25; the rule of the rating that is missing


@rule("RT01", "rating that cannot be answered", Severity.NON_COMPLIANCE, "the table or series named in the message")
def rating_not_answered(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    cables = {cable.key for cable in ac_cables(system)}
    for (key, symbol), reason in ratings.unanswered.items():
        told = symbol in _TOLD_ELSEWHERE or reason.why in _TOLD_OF_ITSELF
        told = told or (key in cables and symbol in (Symbol.IZ, Symbol.R))
        if told or (symbol is Symbol.T_MAX and system.supply.earthing_system == "IT"):
            continue
        device = system.devices.get(key)
        conductor = next((each for each in system.earth_conductors if each.key == key), None)
        who = named(device) if device else designation_of(system, key) or phrase("the system")
        at = device.at if device else conductor.at if conductor else ("site",)
        message = phrase("{who} has no {symbol}: {why}", who=who, symbol=symbol, why=reason.what)
        if reason.why is Why.WITHOUT_SERVICE_FUSE:
            yield Breach(
                message,
                phrase("give `service_fuse` under `supply`, or the rated current in the `circuit`"),
                ("supply",),
                key,
                severity=Severity.ADVICE,
            )
        elif reason.why is Why.SILENT_SPEC:
            yield Breach(
                message,
                phrase("give the power or current of what it serves"),
                at,
                key,
                severity=Severity.ADVICE,
            )
        else:
            yield Breach(
                message,
                phrase("give `connection: ct`")
                if reason.why is Why.NEEDS_TRANSFORMERS
                else phrase("use a value that the table or series holds"),
                at,
                key,
            )
