"""Lightning density not given.

What it checks
    Whether the need of DC surge protection can be told, where an input has none.

Why
    The critical length of the DC route depends on how often lightning strikes the ground near the site.

How
    An input without DC surge protection, and no lightning_density for the site.

Remedy
    The ground flash density from the map of the country, or surge protection in any case.

Clause
    IEC 60364-7-712:2017 712.443.102 (number from memory).

Not covered
    Which source of the density is the right one.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.system import System
from sld.rules.naming import named
from sld.rules.ways import has_dc_surge_protection
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("SU03", "lightning density not given", Severity.ADVICE, "IEC 60364-7-712 712.443.102")
def lightning_density_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.site.lightning_density_per_km2_year is not None or system.earthing.lightning_protection is not None:
        return
    for terminal in system.of(InputTerminal):
        if not has_dc_surge_protection(system, terminal):
            yield Breach(
                phrase(
                    "{terminal} has no surge protection, and without the lightning density its need cannot be told",
                    terminal=named(terminal),
                ),
                phrase("give `lightning_density` under `site`, or add a `surge_protection` to the inputs"),
                ("site", "lightning_density"),
                terminal.key,
            )
