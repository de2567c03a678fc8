"""Devices in series not selective.

What it checks
    Each breaker, fuse and RCBO against the next overcurrent device towards the network, the service fuse included.

Why
    A fault of one inverter or load then opens the device ahead as well, and everything behind that goes dark.

How
    By what the standards of the devices promise: two gG fuses 1.6:1, a gG fuse 1.6 times the breaker behind it and not
    melting within 0.1 s where that one trips at once, a breaker that carries what trips the one behind it, with a
    higher lower bound of the magnetic band. Where that much is kept the limit Is stands beside the device.

Remedy
    A larger device ahead, a smaller one here, or the maker's selectivity table; then accept the finding with it.

Clause
    IEC 60364-5-53:2019 536; IEC 60269-1; IEC 60898-1; IEC 60947-2 (numbers from memory).

Not covered
    Makers' tables and short-time delays, which may promise more. Two devices of one circuit, which feed the same thing.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.ratings.symbol import Symbol, Word
from sld.rules.naming import named
from sld.rules.ways import overcurrent_devices
from sld.steps.ledger import Ratings
from sld.steps.protection import overcurrent_device
from sld.words import phrase


@rule("FA10", "devices in series not selective", Severity.ADVICE, "IEC 60364-5-53 536")
def devices_in_series_not_selective(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for device in overcurrent_devices(system):
        why, ahead = ratings.told(device.key, Word.NO_SELECTIVITY), overcurrent_device(system, device.key)
        if not why or ahead is None:
            continue
        pair = [rating for key in (ahead.key, device.key) if (rating := ratings.get(key, Symbol.IN)) is not None]
        yield Breach(
            phrase(
                "{ahead} may open with or before {device} behind it: {why}",
                ahead=named(ahead),
                device=named(device),
                why=why,
            ),
            phrase(
                "use a larger device ahead or a smaller one here, or show the selectivity by the table of the maker"
            ),
            device.at,
            device.key,
            ((ahead.at, phrase("the device ahead")),),
            tuple(pair),
        )
