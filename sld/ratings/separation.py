"""The distance to keep from a lightning protection system, so that its current does not jump over."""

from __future__ import annotations

from sld.citation import citations, cited
from sld.quantity import Given, Rating
from sld.ratings.domain import require_not_negative
from sld.ratings.symbol import Symbol
from sld.tables.table import table
from sld.words import phrase

__all__ = ["separation_distance"]

_SOLID_FACTOR = 0.5


def separation_distance(level: str, path_m: float, down_conductors_count: int | None = None) -> Rating:
    """Return the least separation distance s in m: ki/km·kc·l.

    level: class of the lightning protection system, I to IV. path_m: length in m along air-termination and
    down-conductor from the point in question to the next bonding point. down_conductors_count: None where it is not
    known, which counts as one. km is 0.5, of brick, wood and concrete; in air alone 1 would do. kc is 1, 0.66, and 0.44
    from three down-conductors on. Raises NoRow for another level, ValueError for a negative length. Source: IEC
    62305-3:2010 6.3, Tables 10 to 12.
    """
    require_not_negative(path_m=path_m)
    ki = table("separation_class").pick(level=level)
    kc = table("separation_share").at_most("down_conductors_count", down_conductors_count or 1)
    ki_factor, kc_factor = ki.number("ki_factor"), kc.number("kc_factor")
    said = () if down_conductors_count else (phrase("one down-conductor, none given"),)
    return Rating(
        Symbol.SEPARATION,
        ki_factor / _SOLID_FACTOR * kc_factor * path_m,
        "m",
        "ki/km·kc·l",
        (
            Given("ki", ki_factor, "", phrase("class {level}", level=level)),
            Given("km", _SOLID_FACTOR, "", phrase("solid material")),
            Given("kc", kc_factor),
            Given("l", path_m, "m"),
        ),
        cited("IEC 62305-3:2010 6.3"),
        citations(ki.reference, kc.reference),
        said,
    )
