"""AC surge protection of type 2 where type 1 is needed.

What it checks
    The type of the surge protection in the main board, on a building with a lightning protection system or with an
    exposed overhead supply.

Why
    Part of the lightning current leaves over the network's conductors; a type 2 device bursts.

How
    A lightning protection system is given, or the supply is `overhead`, and no device in the main board or its supply
    is of type 1 or 1+2.

Remedy
    A device of type 1 or 1+2.

Clause
    IEC 60364-5-53:2019 534.4 (from memory).

Not covered
    Whether an overhead supply is exposed; the spec says so.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.ac import AC_SURGE_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("SU10", "AC surge protection of type 2 where type 1 is needed", Severity.NON_COMPLIANCE, "IEC 60364-5-53 534.4")
def ac_surge_protection_type_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    board = system.main_board()
    needed = ratings.get(board.key, Symbol.SPD_TYPE)
    if needed is None or needed.value != 1:
        return
    lightning = system.earthing.lightning_protection is not None
    why = phrase("a building with lightning protection") if lightning else phrase("an exposed overhead supply")
    place = ("earthing", "lightning_protection") if lightning else ("supply", "overhead")
    protection = system.given_as(AC_SURGE_PROTECTION)
    found = [(each, given) for each, given in protection if board.key in (each.enclosure, each.owner)]
    devices, classes = [each for each, _ in found], [given.test_class for _, given in found]
    if not devices or any("1" in each for each in classes):
        return
    yield Breach(
        phrase("{device} is of type 2, and {why} needs type 1 at the main board", device=named(devices[0]), why=why),
        phrase("use a device of type 1 or 1+2"),
        (*devices[0].at, "test_class"),
        devices[0].key,
        ((place, why),),
    )
