"""DC overcurrent device rated outside the allowed range.

What it checks
    The rated current of each DC fuse and circuit-breaker against the range from In,min to In,max.

Why
    A device that is too small opens in strong sun; a fuse can arc in its holder. One that is too large lets the modules
    and cables burn.

How
    In against In,min (a multiple of Isc by the profile) and In,max (the module's largest series fuse or a multiple
    of Isc). Whether the ends belong to the range is the profile's.

Remedy
    The smallest gPV rating of the range; for a circuit-breaker, a rating in the range.

Clause
    IEC 62548:2016 6.5; IEC 60364-7-712:2017 712.433 (from memory).

Not covered
    Derating of the fuse in a hot enclosure (DC36).
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.kinds.dc import DC_FUSE
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, below, two
from sld.rules.naming import named
from sld.rules.ways import dc_overcurrent_devices
from sld.steps.dc_devices import protects_string, terminal_of
from sld.steps.ledger import Ratings
from sld.tables.profiles import profile
from sld.words import phrase


@rule("DC14", "DC overcurrent device rated outside the allowed range", Severity.DANGER, "IEC 62548-1; IEC 60269-6")
def fuse_rating_outside_range(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    rules = profile(system.profile)
    for fuse in dc_overcurrent_devices(system):
        rated, least, most = (ratings.get(fuse.key, symbol) for symbol in (Symbol.IN, Symbol.IN_MIN, Symbol.IN_MAX))
        if rated is None or least is None:
            continue
        array, grouped = not protects_string(system, fuse), any(each.name == "SG" for each in least.given)
        low_included = not rules.array_fuse_upper_factor.is_set if array else rules.fuse_lower_included.holds
        low_included = low_included and not grouped
        high_included = array or most is None or [each.name for each in most.given] == ["OCPR"]
        too_small = below(rated.value, least.value) or (rated.value == least.value and not low_included)
        too_large = most is not None and (
            above(rated.value, most.value) or (rated.value == most.value and not high_included)
        )
        if not too_small and not too_large:
            continue
        passed = most if too_large and most is not None else least
        has, limit = two(rated.value, passed.value, "A")
        if rated.value == passed.value:
            bound = phrase("and {limit} itself is not in the allowed range", limit=limit)
        elif too_small:
            bound = phrase("below the least allowed {limit}", limit=limit)
        else:
            bound = phrase("above the largest allowed {limit}", limit=limit)
        fits = None if array else ratings.get(terminal_of(system, fuse.key).key, Symbol.IN_STRING)
        remedy = phrase("leave `rated_current` out, and the smallest that fits is chosen")
        if fuse.kind is not DC_FUSE:
            remedy = phrase("use a rating that lies in the range; it is printed where `rated_current` is left out")
        elif fits:
            remedy = phrase("use a {fits} gPV fuse", fits=fits)
        yield Breach(
            phrase("{fuse} is rated {has}, {bound}", fuse=named(fuse), has=has, bound=bound),
            remedy,
            (*fuse.at, "rated_current"),
            fuse.key,
            (),
            (rated, passed),
        )
