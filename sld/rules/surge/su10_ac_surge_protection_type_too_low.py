"""AC surge protection of type 2 where type 1 is needed.

What it checks
    The type of the surge protection in the main board, on a building with a lightning protection system or with an
    overhead supply.

Why
    Part of the lightning current leaves over the network's conductors; a type 2 device bursts.

How
    No device in the main board or its supply is of type 1 or 1+2, and a lightning protection system is given, or
    `direct_strokes` to the overhead line. Advice where the supply is `overhead` and the spec does not say whether
    direct strokes are reckoned with.

Remedy
    A device of type 1 or 1+2.

Clause
    IEC 60364-5-53:2019 534.4.2 (from memory): type 1 with external lightning protection, or where direct strokes to the
    line between its last pole and the entrance of the installation are reckoned with; type 2 otherwise.

Not covered
    How exposed a line is.
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


@rule(
    "SU10",
    "AC surge protection of type 2 where type 1 is needed",
    Severity.NON_COMPLIANCE,
    "IEC 60364-5-53 534.4",
    once=True,
)
def ac_surge_protection_type_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    board = system.main_board()
    needed = ratings.get(board.key, Symbol.SPD_TYPE)
    unknown = system.supply.overhead and system.supply.direct_strokes is None
    if needed is None or (needed.value != 1 and not unknown):
        return
    protection = system.given_as(AC_SURGE_PROTECTION)
    found = [(each, given) for each, given in protection if board.key in (each.enclosure, each.owner)]
    if not found or any("1" in given.test_class for _, given in found):
        return
    device = found[0][0]
    if needed.value != 1:
        yield Breach(
            phrase(
                "{device} is of type 2, and whether the overhead supply is exposed to direct strokes is not said",
                device=named(device),
            ),
            phrase("give `direct_strokes`; where they are, use a device of type 1 or 1+2"),
            (*device.at, "test_class"),
            device.key,
            ((("supply", "overhead"), phrase("overhead supply")),),
            severity=Severity.ADVICE,
        )
        return
    lightning = system.earthing.lightning_protection is not None
    why = phrase("a building with lightning protection") if lightning else phrase("an exposed overhead supply")
    place = ("earthing", "lightning_protection") if lightning else ("supply", "direct_strokes")
    yield Breach(
        phrase("{device} is of type 2, and {why} needs type 1 at the main board", device=named(device), why=why),
        phrase("use a device of type 1 or 1+2"),
        (*device.at, "test_class"),
        device.key,
        ((place, why),),
    )
