"""Inverter far from AC surge protection.

What it checks
    The cable between each inverter and the nearest AC surge protection, where lightning current can enter: with a
    lightning protection system, or an exposed overhead supply.

Why
    Along more than 10 m of cable the voltage doubles again by reflection, and the device at the origin no longer
    protects the inverter.

How
    LSPD > 10 m, and the inverter has no AC surge protection of its own.

Remedy
    A second device of type 2 near the inverter.

Clause
    IEC 60364-5-53:2019 534.4.9 (from memory); IEC 61643-12.

Not covered
    Systems without lightning protection system and with an underground supply. Inverters without any AC surge
    protection ahead (SU08).
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InverterUnit
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase

_PROTECTED_M = 10.0


@rule("SU25", "inverter far from AC surge protection", Severity.ADVICE, "IEC 60364-5-53 534.4.9")
def inverter_far_from_ac_surge_protection(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.earthing.lightning_protection is None and not system.supply.overhead:
        return
    for unit in system.of(InverterUnit):
        distance = ratings.get(unit.key, Symbol.L_AC_SURGE)
        if distance is None or unit.type.ac_surge_protection != "none" or not above(distance.value, _PROTECTED_M):
            continue
        has, reach = two(distance.value, _PROTECTED_M, "m")
        yield Breach(
            phrase(
                "{unit} is {has} of cable from the nearest AC surge protection, which reaches {reach}",
                unit=named(unit),
                has=has,
                reach=reach,
            ),
            phrase("add a `surge_protection` of type 2 near the inverter"),
            unit.at,
            unit.key,
            (),
            (distance,),
        )
