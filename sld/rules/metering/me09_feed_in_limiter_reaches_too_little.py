"""Feed-in limiter reaches too little.

What it checks
    Whether the inverters that a feed-in limiter does not act on stay below the limit by themselves, and those that it
    acts on when its measurement is lost.

Why
    A limiter can turn down only what it reaches. What the others feed in at noon is above the limit, whatever it does.

How
    Σ power of the inverters and battery converters it does not act on > export_limit; an inverter's `power_limit`
    counts for its rated power. Or `fail_safe_power` > export_limit.

Remedy
    Let it act on more inverters, or set a `power_limit` at the others; or lower the power without a measurement.

Clause
    Terms of the network operator; common practice, no source.

Not covered
    Controllers that act on one another; how soon they do.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import BatteryUnit, Device, InverterUnit
from sld.model.limiters import feed_in_limiters
from sld.model.system import System
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("ME09", "feed-in limiter reaches too little", Severity.NON_COMPLIANCE, "terms of the network operator")
def feed_in_limiter_reaches_too_little(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    limit_w = system.supply.export_limit_w
    limiters = list(feed_in_limiters(system))
    reached = {key for _, given in limiters for name in given.inverters for key in system.names[name]}
    for limiter, given in limiters:
        yield from _without_sensor(limiter, given.fail_safe_power_w, limit_w)
        left_w = sum(
            min(unit.type.rated_power_w, unit.given.power_limit_w or unit.type.rated_power_w)
            for unit in system.every(InverterUnit)
            if unit.key not in reached
        )
        left_w += sum(
            unit.given.converter_power_va or 0.0
            for unit in system.of(BatteryUnit)
            if not unit.dc and unit.key not in reached
        )
        if limit_w is None or not above(left_w, limit_w):
            continue
        has, allowed = two(left_w, limit_w, "W")
        yield Breach(
            phrase(
                "what {limiter} does not act on feeds in {has}, above the limit of {allowed}",
                limiter=named(limiter),
                has=has,
                allowed=allowed,
            ),
            phrase("name more of the inverters in `feed_in_limit`, or give a `power_limit` at the others"),
            (*limiter.at, "feed_in_limit", "inverters"),
            limiter.key,
            ((("supply", "export_limit"), phrase("limit")),),
        )


def _without_sensor(limiter: Device, left_w: float | None, limit_w: float | None) -> Iterator[Breach]:
    """Yield where more is fed in than is allowed once the measurement is lost."""
    if left_w is None or limit_w is None or not above(left_w, limit_w):
        return
    has, allowed = two(left_w, limit_w, "W")
    yield Breach(
        phrase(
            "without its measurement {limiter} lets {has} be fed in, above the limit of {allowed}",
            limiter=named(limiter),
            has=has,
            allowed=allowed,
        ),
        phrase("turn down to at most {allowed}", allowed=allowed),
        (*limiter.at, "feed_in_limit", "fail_safe_power"),
        limiter.key,
        ((("supply", "export_limit"), phrase("limit")),),
    )
