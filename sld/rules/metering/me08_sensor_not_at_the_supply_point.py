"""Sensor of the feed-in limiter not at the supply point.

What it checks
    Where the sensor of each feed-in limiter stands, and that it is a meter.

Why
    What is fed in or drawn ahead of the sensor is not seen: the limiter takes the export for smaller or larger than it
    is.

How
    A device of another kind than a meter, or an inverter, battery or load that is not behind the sensor.

Remedy
    A meter with `purpose: feed_in_limit` in the circuit of the main board, ahead of every branch.

Clause
    Terms of the network operator; common practice, no source.

Not covered
    The direction in which its current transformers are mounted.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import BatteryUnit, Consumer, InverterUnit
from sld.model.kinds.ac import METER
from sld.model.limiters import feed_in_limiters
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("ME08", "sensor of the feed-in limiter not at the supply point", Severity.NON_COMPLIANCE, "network operator")
def sensor_not_at_the_supply_point(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    batteries = (each for each in system.of(BatteryUnit) if not each.dc)
    units = [*system.every(InverterUnit), *system.of(Consumer), *batteries]
    for limiter, limit in feed_in_limiters(system):
        sensor = system.devices[system.names[limit.sensor][0]]
        behind = {each.key for each in system.downstream(sensor.key)}
        unseen = next((each for each in units if each.key not in behind), None)
        if sensor.kind is METER and unseen is None:
            continue
        yield Breach(
            phrase(
                "{limiter} has {sensor} for a sensor, which is no meter", limiter=named(limiter), sensor=named(sensor)
            )
            if sensor.kind is not METER or unseen is None
            else phrase(
                "{limiter} measures by {sensor}, which does not see {unit}",
                limiter=named(limiter),
                sensor=named(sensor),
                unit=named(unseen),
            ),
            phrase("name a `meter` in the `circuit` of the main board, ahead of every branch"),
            (*limiter.at, "feed_in_limit", "sensor"),
            limiter.key,
        )
