"""Voltage rise too high.

What it checks
    The voltage rise Δu,ac from the supply point to each inverter at full export against the limit.

Why
    The inverter sees the rise on top of the network's voltage and switches off on good days.

How
    Δu,ac > Δu,limit, with conductors as warm as the export makes them (BS 7671 Appendix 4 6.1) and the reactive power
    that the inverters supply or absorb by their setting. Non-compliance where the spec or the standard of the profile
    (AS/NZS 4777.1) sets a limit, advice where it is the profile's target.

Remedy
    Larger sections or shorter cables on the way; the whole way counts, not one cable. Sections that are left out are
    chosen for the whole way, up to the terminals at both ends, else three sizes above what carries the current.

Clause
    Common practice: 1 % design target; AS/NZS 4777.1:2016 3.3.3 for the sum over the whole way.

Not covered
    The rise in the public network and in the operator's service cable.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Cable, InverterUnit
from sld.model.system import System
from sld.quantity import Origin
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.tables.profiles import profile
from sld.words import phrase


@rule("AC15", "voltage rise too high", Severity.NON_COMPLIANCE, "common practice; the network operator's limit")
def voltage_rise_too_high(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    limit = ratings.get("", Symbol.DU_LIMIT)
    stated = system.supply.voltage_rise_limit_percent is not None
    binding = stated or profile(system.profile).ac_rise_is_required.holds
    for unit in system.of(InverterUnit):
        rise = ratings.get(unit.key, Symbol.DU_AC)
        if limit is None or rise is None or not above(rise.value, limit.value):
            continue
        has, allowed = two(rise.value, limit.value, "%")
        cables = [device for device in system.upstream(unit.key) if isinstance(device, Cable)]
        worst = max(cables, key=lambda cable: part.value if (part := ratings.get(cable.key, Symbol.DU_RISE)) else 0.0)
        remedy = phrase("use a larger `section` on the way, so that the rise is at most {allowed}", allowed=allowed)
        if all((section := ratings.get(each.key, Symbol.S)) and section.origin is Origin.CHOSEN for each in cables):
            remedy = phrase(
                "shorten the way or lay cables in `parallel`; larger sections do not go into the terminals, or lie "
                "more than three sizes above the one that carries the current: say so by `terminal_section_max`"
            )
        where = (*worst.at, "section")
        also = ((("supply", "voltage_rise_limit"), "limit"),) if stated else ()
        if binding:
            yield Breach(
                phrase(
                    "{unit} lifts its voltage by {has} at full export, above the limit of {allowed}",
                    unit=named(unit),
                    has=has,
                    allowed=allowed,
                ),
                remedy,
                where,
                unit.key,
                also,
                (rise, limit),
            )
        else:
            yield Breach(
                phrase(
                    "{unit} lifts its voltage by {has} at full export, above the target of {allowed}",
                    unit=named(unit),
                    has=has,
                    allowed=allowed,
                ),
                remedy,
                where,
                unit.key,
                also,
                (rise, limit),
                severity=Severity.ADVICE,
            )
