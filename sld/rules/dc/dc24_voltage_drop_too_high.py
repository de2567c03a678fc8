"""Voltage drop of the array cabling too high.

What it checks
    The voltage drop Δu,dc from the farthest string to the input, in percent of the MPP voltage at standard test
    conditions.

Why
    What drops along the cable is lost and heats it.

How
    Advice above the profile's target, non-compliance above its limit.

Remedy
    A larger section or a shorter way.

Clause
    Common practice: 1 % as a target, 3 % as a limit; some guides write it as a rule (see the profile's values).

Not covered
    The yearly loss of energy, which is about half of the figure.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Cable, InputTerminal
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.inputs import groups_behind
from sld.steps.ledger import Ratings
from sld.tables.profiles import profile
from sld.words import phrase


@rule(
    "DC24", "voltage drop of the array cabling too high", Severity.NON_COMPLIANCE, "common practice; the rule profile"
)
def voltage_drop_too_high(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    rules = profile(system.profile)
    for terminal in system.of(InputTerminal):
        drop = ratings.get(terminal.key, Symbol.DU_DC)
        if drop is None:
            continue
        limit, target = rules.dc_drop_limit_percent, rules.dc_drop_advice_percent
        ways = [device for group in groups_behind(system, terminal.key) for device in system.upstream(group.key)]
        cables = [device for device in ways if isinstance(device, Cable) and device.dc]
        worst = max(
            cables, key=lambda cable: part.value if (part := ratings.get(cable.key, Symbol.DU_DC_CABLE)) else 0.0
        )

        if limit.is_set and above(drop.value, limit.value):
            has, allowed = two(drop.value, limit.value, "%")
            yield Breach(
                phrase(
                    "{terminal} loses {has} of its voltage along the cables, above the limit of {allowed}",
                    terminal=named(terminal),
                    has=has,
                    allowed=allowed,
                ),
                phrase("use a larger `section` or a shorter way, so that Δu,dc is at most {allowed}", allowed=allowed),
                (*worst.at, "section"),
                terminal.key,
                (),
                (drop,),
            )
        elif target.is_set and above(drop.value, target.value):
            has, allowed = two(drop.value, target.value, "%")
            yield Breach(
                phrase(
                    "{terminal} loses {has} of its voltage along the cables, above the target of {allowed}",
                    terminal=named(terminal),
                    has=has,
                    allowed=allowed,
                ),
                phrase("use a larger `section` or a shorter way, so that Δu,dc is at most {allowed}", allowed=allowed),
                (*worst.at, "section"),
                terminal.key,
                (),
                (drop,),
                severity=Severity.ADVICE,
            )
