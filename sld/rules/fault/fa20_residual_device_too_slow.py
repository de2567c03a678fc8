"""RCD too slow for its circuit.

What it checks
    How long the fastest RCD of each circuit takes at the earth-fault current of its far end, against the longest time
    to disconnect that circuit.

Why
    A delay that is right for a feeder leaves exposed parts of a final circuit live for too long.

How
    t,RCD > t,max, where the overcurrent device does not switch off in time itself. t,max is 0.2 s in a final circuit
    of a TT system at 230 V to earth and 1 s in a feeder, in TN 0.4 s and 5 s. In TT the RCD of a board is held to the
    1 s itself, whatever follows it.

Remedy
    An RCD without delay in the final circuit, or a shorter delay.

Clause
    IEC 60364-4-41:2005+A1:2017 Table 41.1, 411.3.2.3, 411.3.2.4, 411.5.3; IEC 61008-1 Table 1.

Not covered
    Tolerance of a delay that is set: the maker's data count.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import RCD
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.rules.ways import overcurrent_devices
from sld.steps.ledger import Ratings
from sld.steps.protection import residual_devices
from sld.words import Value, phrase


@rule("FA20", "RCD too slow for its circuit", Severity.DANGER, "IEC 60364-4-41 Table 41.1")
def residual_device_too_slow(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device in (*overcurrent_devices(system), *system.apparatus(RCD)):
        takes, most = ratings.get(device.key, Symbol.T_RCD), ratings.get(device.key, Symbol.T_MAX)
        if takes is None or most is None or not above(takes.value, most.value):
            continue
        slow = residual_devices(system, device)[0]
        has, allowed = two(takes.value, most.value, "s")
        said: dict[str, Value] = {"slow": named(slow), "has": has, "allowed": allowed}
        yield Breach(
            phrase("{slow} may take {has} in the circuit of its board, above the {allowed} allowed", **said)
            if slow is device
            else phrase(
                "{slow} may take {has} in the circuit of {device}, above the {allowed} allowed",
                device=named(device),
                **said,
            ),
            phrase("use an RCD without delay in that circuit, or a shorter `delay`"),
            slow.at,
            device.key,
            ((device.at, phrase("the circuit")),),
            (takes, most),
        )
