"""The strings in parallel at one inverter input: their currents and the power ratio.

The number of parallel strings counts every string that can feed one fault: those of one independent input, or of the
whole inverter where its design does not exclude current between inputs. Where modules are bifacial, pass the currents
with their rear gain (`module.design_short_circuit_current`).
"""

from __future__ import annotations

from sld.citation import citations, cited, clauses_from_memory
from sld.quantity import Given, Rating
from sld.ratings.symbol import Symbol
from sld.tables.profiles import Profile
from sld.words import Sayable, phrase

__all__ = ["dc_ac_ratio", "impp_total", "isc_max", "isc_total", "reverse_current", "terminal_current"]


def _sum(symbol: Symbol, strings_count: int, current: Given, clause: Sayable) -> Rating:
    return Rating(
        symbol,
        strings_count * current.number,
        "A",
        f"Np·{current.symbol}",
        (Given("Np", strings_count), current),
        clause,
    )


def impp_total(strings_count: int, impp_a: float) -> Rating:
    """Return the MPP current at STC in A: Np·Impp. Compared with the largest input current; more is clipped."""
    return _sum(
        Symbol.IMPP,
        strings_count,
        Given("Impp,STC", impp_a, "A"),
        cited(phrase("definition"), remark=phrase("sum of the strings at STC")),
    )


def isc_total(strings_count: int, isc_a: float) -> Rating:
    """Return the short-circuit current at STC in A: Np·Isc, without KI."""
    return _sum(
        Symbol.ISC,
        strings_count,
        Given("Isc,STC", isc_a, "A"),
        cited(phrase("definition"), remark=phrase("sum of the strings at STC")),
    )


def isc_max(strings_count: int, isc_a: float, profile: Profile) -> Rating:
    """Return the largest short-circuit current Isc,max in A: KI·Np·Isc.

    An inverter limit that its data sheet states for STC is compared with `isc_total`, any other with this.
    Source: the profile's clause for KI (1.25).
    """
    ki = profile.isc_factor
    return Rating(
        Symbol.ISC_MAX,
        ki.value * strings_count * isc_a,
        "A",
        "KI·Np·Isc",
        (
            Given("KI", ki.value, "", profile.said),
            Given("Np", strings_count),
            Given("Isc", isc_a, "A"),
        ),
        ki.cited,
        ki.reference,
    )


def terminal_current(strings_count: int, isc_a: float, profile: Profile) -> Rating:
    """Return the largest current of one pair of terminals in A: KI·n·Isc, n strings on the pair.

    Its limit can be far below that of the input behind it. Source: data sheet of the inverter; the profile's KI.
    """
    ki = profile.isc_factor
    return Rating(
        Symbol.ITERMINAL,
        ki.value * strings_count * isc_a,
        "A",
        "KI·n·Isc",
        (
            Given("KI", ki.value, "", profile.said),
            Given("n", strings_count),
            Given("Isc", isc_a, "A"),
        ),
        citations(cited(phrase("data sheet of the inverter")), ki.cited),
        ki.reference,
    )


def reverse_current(strings_count: int, isc_a: float, profile: Profile, backfeed_a: float = 0.0) -> Rating:
    """Return the largest reverse current through one faulted string in A: (Np - 1)·KI·Isc + backfeed.

    backfeed_a: the inverter's largest backfeed current to the array in A, 0 for a PV-only inverter that declares none.
    Raises ValueError for fewer than one string. Source: IEC 62548 (others feed the faulted string), UTE C15-712-1.
    """
    if strings_count < 1:
        raise ValueError(f"there must be at least one string, not {strings_count}")
    ki = profile.isc_factor
    return Rating(
        Symbol.IREV,
        (strings_count - 1) * ki.value * isc_a + backfeed_a,
        "A",
        "(Np - 1)·KI·Isc + Ibackfeed",
        (
            Given("Np", strings_count),
            Given("KI", ki.value, "", profile.said),
            Given("Isc", isc_a, "A"),
            Given("Ibackfeed", backfeed_a, "A"),
        ),
        citations(clauses_from_memory("UTE C15-712-1, IEC 61730-2 MST 26"), ki.cited),
        ki.reference,
    )


def dc_ac_ratio(p_dc_w: float, p_ac_w: float) -> Rating:
    """Return the ratio of the array's rated power to the inverter's rated AC power, both in W.

    Raises ValueError for an AC power that is not above 0.
    """
    if p_ac_w <= 0:
        raise ValueError(f"the AC power must be above 0 W, not {p_ac_w}")
    return Rating(
        Symbol.PDC_BY_PAC,
        p_dc_w / p_ac_w,
        "",
        "Pdc/Pac",
        (Given("Pdc", p_dc_w, "W"), Given("Pac", p_ac_w, "W")),
        cited(phrase("definition"), remark=phrase("rated powers")),
    )
