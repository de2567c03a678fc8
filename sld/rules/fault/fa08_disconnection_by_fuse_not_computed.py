"""Disconnection by a fuse not computed.

What it checks
    Fuses that protect a circuit without an RCD on the way, and that the tables of gG fuses do not hold.

Why
    Without a tabulated current only the maker's curve tells when a fuse opens; it is not checked here.

How
    A fuse with a loop impedance and without a tripping current, and no RCD sees the circuit: above 1250 A, or where
    less than 0.1 s is allowed.

Remedy
    Read the current for the time t,max from the fuse's curve and compare U0 / Zs with it; then accept the finding.

Clause
    IEC 60364-4-41:2005+A1:2017 411.4.4.

Not covered
    The service fuse, which belongs to the network operator.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import FUSE
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.naming import named
from sld.rules.ways import has_residual_device, overcurrent_devices
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("FA08", "disconnection by a fuse not computed", Severity.ADVICE, "IEC 60364-4-41 411.4.4")
def disconnection_by_fuse_not_computed(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device in overcurrent_devices(system):
        loop, limit = ratings.get(device.key, Symbol.ZS), ratings.get(device.key, Symbol.T_MAX)
        if device.kind is not FUSE or ratings.get(device.key, Symbol.IA) is not None:
            continue
        if loop is None or limit is None or has_residual_device(system, device):
            continue
        yield Breach(
            phrase(
                "{device} must open within {limit} on a loop of {loop}; not computed",
                device=named(device),
                limit=limit,
                loop=loop,
            ),
            phrase("compare with the fuse's time-current curve, or use a circuit-breaker"),
            device.at,
            device.key,
            (),
            (loop, limit),
        )
