"""DC surge protection of type 2 where type 1 is needed.

What it checks
    The type of the DC surge protection of each input, built in or in its circuit, against the type that is needed.

Why
    Where frames touch the lightning protection, part of the lightning current flows through the array; a type 2
    device bursts.

How
    Type 1 is needed because the separation distance is not kept, or because a plant on the ground with many earthed
    supports has a lightning protection system; and no device of type 1 or 1+2 is on the way.

Remedy
    A device of type 1 or 1+2, or keep the separation distance everywhere.

Clause
    IEC 62305-3 6.3; CLC/TS 50539-12 4.3.

Not covered
    The lightning current that the device must carry.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.kinds.dc import DC_SURGE_PROTECTION
from sld.model.kinds.role import SURGE_PROTECTION
from sld.model.system import System
from sld.ratings.symbol import Word
from sld.rules.naming import named
from sld.rules.ways import devices_of_input
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("SU05", "DC surge protection of type 2 where type 1 is needed", Severity.DANGER, "IEC 62305-3; CLC/TS 50539-12")
def dc_surge_protection_type_too_low(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        devices = devices_of_input(system, terminal, DC_SURGE_PROTECTION)
        built_in = system.inverter_of(terminal).type.dc_surge_protection
        classes = [given.test_class for device in devices if (given := device.given_as(SURGE_PROTECTION))]
        present = [*classes, *([built_in] if built_in != "none" else [])]
        if ratings.word(terminal.key, Word.SPD_TYPE) != "1" or not present or any("1" in each for each in present):
            continue
        at = (*devices[0].at, "test_class") if devices else (*terminal.at, "circuit")
        flagged = devices[0] if devices else terminal
        lightning = system.earthing.lightning_protection
        if lightning is not None and lightning.separation_kept:
            why = phrase("the earthed supports of a plant on the ground share the lightning current")
            remedy = phrase("use a device of type 1 or 1+2")
        else:
            why = phrase("the separation distance to the lightning protection is not kept")
            remedy = phrase("use a device of type 1 or 1+2, or keep the separation distance everywhere")
        yield Breach(
            phrase(
                "{flagged} offers surge protection of type 2 where type 1 is needed, because {why}",
                flagged=named(flagged),
                why=why,
            ),
            remedy,
            at,
            flagged.key,
            ((("earthing", "lightning_protection", "separation_kept"), phrase("separation distance")),),
        )
