"""DC fuse rated outside the allowed range.

What it checks
    The rated current of each DC fuse against the range from In,min to In,max.

Why
    A fuse that is too small opens in strong sun and can arc in its holder. One that is too large lets the modules
    and cables burn.

How
    In against In,min (a multiple of Isc by the profile) and In,max (the module's largest series fuse or a multiple
    of Isc). Whether the ends belong to the range is the profile's.

Remedy
    The smallest gPV rating of the range.

Clause
    IEC 62548:2016 6.5; IEC 60364-7-712:2017 712.433 (from memory).

Not covered
    Derating of the fuse in a hot enclosure (DC36).
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Finding, Severity, rule
from sld.model.kinds.dc import DC_FUSE
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, below, two
from sld.rules.naming import named
from sld.steps.dc_devices import protects_string, terminal_of
from sld.steps.ledger import Ratings
from sld.tables.profiles import profile


@rule("DC14", "DC fuse rated outside the allowed range", Severity.DANGER, "IEC 62548-1; IEC 60269-6")
def fuse_rating_outside_range(system: System, ratings: Ratings) -> Iterator[Finding]:
    """Yield a finding for each case; see the text at the head of this file."""
    rules = profile(system.profile)
    for fuse in system.apparatus(DC_FUSE):
        rated, least, most = (ratings.get(fuse.key, symbol) for symbol in (Symbol.IN, Symbol.IN_MIN, Symbol.IN_MAX))
        if rated is None or least is None:
            continue
        array, grouped = not protects_string(system, fuse), "SG" in str(least.formula)
        low_included = not rules.array_fuse_upper_factor.is_set if array else rules.fuse_lower_included.holds
        low_included = low_included and not grouped
        high_included = array or most is None or most.formula == "OCPR"
        too_small = below(rated.value, least.value) or (rated.value == least.value and not low_included)
        too_large = most is not None and (
            above(rated.value, most.value) or (rated.value == most.value and not high_included)
        )
        if not too_small and not too_large:
            continue
        passed = most if too_large and most is not None else least
        has, limit = two(rated.value, passed.value, "A")
        bound = f"{'below' if too_small else 'above'} the {'least' if too_small else 'largest'} allowed {limit}"
        if has == limit:
            bound = f"and {limit} itself is not in the allowed range"
        fits = None if array else ratings.get(terminal_of(system, fuse.key).key, Symbol.IN_STRING)
        remedy = (
            f"use a {fits.quantity()} gPV fuse"
            if fits
            else "leave `rated_current` out, and the smallest that fits is chosen"
        )
        yield Finding(
            "DC14",
            Severity.DANGER,
            f"{named(fuse)} is rated {has}, {bound}",
            remedy,
            (*fuse.at, "rated_current"),
            fuse.key,
            (),
            (rated, passed),
        )
