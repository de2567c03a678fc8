"""DC isolator of a category that is not for PV under load.

What it checks
    DC isolators of category DC-PV0 or DC-21B.

Why
    DC-PV0 must not be opened under load, and DC-21B is tested with resistive loads, not with the current of a PV
    string.

How
    The category is given as one of the two, and the rule on several strings has not been broken already. Danger with
    DC-PV0, advice with DC-21B, and with DC-PV0 where another switch of the input opens the load.

Remedy
    DC-PV1 for one string, DC-PV2 for several.

Clause
    IEC 60947-3:2020, annex on PV switches (from memory).

Not covered
    Which of two switches is opened first.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Apparatus
from sld.model.kinds.dc import DC_ISOLATOR
from sld.model.kinds.role import ISOLATION, SWITCHING
from sld.model.system import System
from sld.ratings.symbol import Word
from sld.rules.naming import named
from sld.rules.ways import devices_of_input
from sld.steps.dc_devices import terminal_of
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC21", "DC isolator of a category that is not for PV under load", Severity.DANGER, "IEC 60947-3:2020, PV annex")
def isolator_category_not_for_pv(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for switch, block in system.given_as(DC_ISOLATOR):
        given = block.utilization_category
        needed = ratings.word(switch.key, Word.CATEGORY)
        if given not in ("DC-PV0", "DC-21B") or (given == "DC-PV0" and needed == "DC-PV2"):
            continue
        what = (
            phrase("is not to be opened under load") if given == "DC-PV0" else phrase("is not tested with PV strings")
        )
        yield Breach(
            phrase("{switch} is of category {given}, which {what}", switch=named(switch), given=given, what=what),
            phrase("use a DC isolator of category {needed}", needed=needed or "DC-PV2"),
            (*switch.at, "utilization_category"),
            switch.key,
            severity=None if given == "DC-PV0" and not _opens_load(system, switch) else Severity.ADVICE,
        )


def _opens_load(system: System, switch: Apparatus) -> bool:
    """Return whether another switch isolates the input of one under load, in its circuit or built into the inverter."""
    terminal = terminal_of(system, switch.key)
    others = [each for each in devices_of_input(system, terminal, SWITCHING) if each is not switch]
    kept = (each.given_as(DC_ISOLATOR) for each in others if each.has(ISOLATION))
    return system.inverter_of(terminal).type.dc_switch or any(
        each is None or each.utilization_category != "DC-PV0" for each in kept
    )
