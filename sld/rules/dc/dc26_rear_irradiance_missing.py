"""Bifacial modules without rear irradiance.

What it checks
    Module types with a bifaciality factor, on a site without a value for the irradiance on the rear side.

Why
    The rear side adds to the short-circuit current, on which fuses, cables and input limits depend.

How
    bifaciality is given for the module and rear_irradiance is not given for the site; 10 % is then taken.

Remedy
    The rear irradiance in percent of the front: about 5 on a dark roof, 10 to 15 above ground, up to 30 above
    white.

Clause
    IEC 62548-1:2023 Annex F (from memory); the typical values are common practice, no source.

Not covered
    Rear irradiance that differs between strings.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import StringGroup
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DC26", "bifacial modules without rear irradiance", Severity.ADVICE, "IEC 62548-1 Annex F", once=True)
def rear_irradiance_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.site.rear_irradiance_percent is not None:
        return
    told: set[str] = set()
    for group in system.of(StringGroup):
        if not group.type.bifaciality_percent or group.type_name in told:
            continue
        told.add(group.type_name)
        current = ratings.get(group.key, Symbol.ISC_D)
        yield Breach(
            phrase(
                "{group} has bifacial modules, and the rear irradiance of the site is not given; 10 % is taken",
                group=named(group),
            ),
            phrase("give `rear_irradiance` under `site`, for example 5 % on a dark roof, 10 % above ground"),
            ("site", "rear_irradiance"),
            group.key,
            ((("types", "modules", group.type_name, "bifaciality"), phrase("bifaciality of the module")),),
            (current,) if current else (),
        )
