"""The string fuse: whether one is needed, between which ratings it may lie, and the smallest that fits.

The standards disagree, so the profile decides. For Isc 18.5 A, OCPR 35 A and three strings IEC 62548:2016 needs a fuse
(2·18.5 = 37 > 35 A) and IEC 60364-7-712:2017 does not (2·1.25·18.5 = 46.25 < 1.35·35 = 47.25 A). OCPR is the module's
maximum overcurrent protection rating. All currents in A; Isc at STC, with its rear gain where the module is bifacial.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import floor, isfinite

from sld.citation import citations, cited, clause_from_memory, clauses_from_memory, from_memory
from sld.frozen import dataclass
from sld.quantity import Given, Origin, Rating
from sld.ratings.passed_over import SHOWN_COUNT
from sld.ratings.symbol import Symbol
from sld.tables.profiles import Profile
from sld.tables.table import next_at_least, series, table
from sld.words import NOTHING, Sayable, amount, phrase

__all__ = [
    "FuseNeed",
    "FuseWindow",
    "array_window",
    "breaking_current",
    "carried_current",
    "current_when_hot",
    "fusing_current",
    "grouped_window",
    "need",
    "smallest_rating",
    "unfused_strings_max",
    "voltage_min",
    "window",
]

_FUSING_FACTOR = 1.45

_HOT_FACTOR = 0.85
"""Of the rated current, in an enclosure at about 60 °C: the lower end of what makers of fuses print."""


@dataclass(frozen=True, slots=True)
class FuseNeed:
    """The two sides of the need test and its outcome. `needed` is reverse > withstand with tolerance 0, from Np on."""

    reverse: Rating
    withstand: Rating
    needed: bool


@dataclass(frozen=True, slots=True)
class FuseWindow:
    """The ratings a fuse may have: from `lower` to `upper`, each with whether it belongs to the window itself."""

    lower: Rating
    lower_included: bool
    upper: Rating
    upper_included: bool

    def holds(self, i_n_a: float) -> bool:
        """Return whether a rated current in A lies in the window. Tolerance 0."""
        above = i_n_a > self.lower.value or (self.lower_included and i_n_a == self.lower.value)
        below = i_n_a < self.upper.value or (self.upper_included and i_n_a == self.upper.value)
        return above and below

    @property
    def is_empty(self) -> bool:
        """Return whether no current at all lies in the window."""
        if self.lower.value == self.upper.value:
            return not (self.lower_included and self.upper_included)
        return self.lower.value > self.upper.value


def need(strings_count: int, isc_a: float, ocpr_a: float, profile: Profile) -> FuseNeed:
    """Return whether each of `strings_count` parallel strings needs overcurrent protection, with both sides.

    (Np - 1)·a·Isc > b·OCPR, a and b of the profile, and never below the profile's number of strings:
    IEC 62548:2016 a 1, b 1; IEC 60364-7-712:2017 a 1.25, b 1.35 and from three strings; NEC 2023 690.9(A) a 1.25, b 1.
    The module's manual may allow fewer unfused strings still. Exactly at the limit none is needed.
    """
    on_isc, on_ocpr = profile.fuse_need_isc_factor, profile.fuse_need_ocpr_factor
    others = strings_count - 1
    reverse = Rating(
        Symbol.IREV_TEST,
        others * (on_isc.value * isc_a),
        "A",
        "(Np - 1)·a·Isc",
        (
            Given("Np", strings_count),
            Given("a", on_isc.value, "", profile.said),
            Given("Isc", isc_a, "A"),
        ),
        on_isc.cited,
        on_isc.reference,
    )
    withstand = Rating(
        Symbol.OCPR,
        on_ocpr.value * ocpr_a,
        "A",
        "b·OCPR",
        (Given("b", on_ocpr.value, "", profile.said), Given("OCPR", ocpr_a, "A")),
        on_ocpr.cited,
        on_ocpr.reference,
    )
    counted = strings_count >= profile.fuse_need_from_strings_count.value
    return FuseNeed(reverse, withstand, counted and reverse.value > withstand.value)


def unfused_strings_max(isc_a: float, ocpr_a: float, profile: Profile) -> Rating:
    """Return the largest number of parallel strings that need no string fuse, by `need`."""
    on_isc, on_ocpr, from_count = (
        profile.fuse_need_isc_factor,
        profile.fuse_need_ocpr_factor,
        profile.fuse_need_from_strings_count,
    )
    # A floating division may round across an integer, a division of fractions cannot.
    others = floor(Fraction(on_ocpr.value * ocpr_a) / Fraction(on_isc.value * isc_a))
    count = max(int(from_count.value) - 1, others + 1)
    return Rating(
        Symbol.NP_MAX,
        count,
        "",
        f"max({from_count.value - 1:g}, floor(b·OCPR/(a·Isc)) + 1)",
        (
            Given("a", on_isc.value, "", profile.said),
            Given("b", on_ocpr.value, "", profile.said),
            Given("Isc", isc_a, "A"),
            Given("OCPR", ocpr_a, "A"),
        ),
        on_isc.cited,
        on_isc.reference,
    )


def _multiple(symbol: Symbol, factor_row: tuple[float, Sayable, Sayable], isc: Given, profile: Profile) -> Rating:
    factor, clause, reference = factor_row
    return Rating(
        symbol,
        factor * isc.number,
        "A",
        f"f·{isc.symbol}",
        (Given("f", factor, "", profile.said), isc),
        clause,
        reference,
    )


def _ocpr(ocpr_a: float, clause: Sayable) -> Rating:
    return Rating(Symbol.IN_MAX, ocpr_a, "A", "OCPR", (Given("OCPR", ocpr_a, "A"),), clause)


def window(isc_a: float, ocpr_a: float, profile: Profile) -> FuseWindow:
    """Return the window of the rated current of a string fuse.

    IEC 62548:2016: 1.5·Isc < In < 2.4·Isc and In <= OCPR. IEC 60364-7-712:2017: 1.375·Isc <= In <= OCPR. NEC 2023:
    1.5625·Isc <= In <= OCPR. The window may be empty; then no fuse is right and fewer strings or other modules are.
    """
    isc = Given("Isc", isc_a, "A")
    low, high = profile.fuse_lower_factor, profile.fuse_upper_factor
    lower = _multiple(Symbol.IN_MIN, (low.value, low.cited, low.reference), isc, profile)
    upper = _ocpr(ocpr_a, citations(high.cited, cited(phrase("In not above OCPR, IEC 61730-1"))))
    included = True
    if high.is_set and high.value * isc_a <= ocpr_a:
        upper, included = _multiple(Symbol.IN_MAX, (high.value, high.cited, high.reference), isc, profile), False
    return FuseWindow(lower, profile.fuse_lower_included.holds, upper, included)


def grouped_window(isc_a: float, ocpr_a: float, strings_per_fuse_count: int, profile: Profile) -> FuseWindow:
    """Return the window of one fuse for several strings joined ahead of it (Y connectors). Seldom anything fits.

    f·SG·Isc < In < OCPR - (SG - 1)·Isc, f the profile's lower factor. Raises ValueError for fewer than two strings.
    Source: IEC 62548:2016 6.5 (from memory); no other profile gives a rule, so this one is used for all.
    """
    if strings_per_fuse_count < 2:
        raise ValueError(f"a group has at least two strings, not {strings_per_fuse_count}")
    low = profile.fuse_lower_factor
    group = Given("SG", strings_per_fuse_count)
    isc = Given("Isc", isc_a, "A")
    clause = clause_from_memory(phrase("{standard}, grouped strings", standard="IEC 62548:2016 6.5"))
    lower = Rating(
        Symbol.IN_MIN,
        low.value * strings_per_fuse_count * isc_a,
        "A",
        "f·SG·Isc",
        (Given("f", low.value, "", profile.said), group, isc),
        clause,
        low.reference,
    )
    upper = Rating(
        Symbol.IN_MAX,
        ocpr_a - (strings_per_fuse_count - 1) * isc_a,
        "A",
        "OCPR - (SG - 1)·Isc",
        (Given("OCPR", ocpr_a, "A"), group, isc),
        clause,
    )
    return FuseWindow(lower, False, upper, False)


def array_window(isc_array_a: float, profile: Profile) -> FuseWindow:
    """Return the window of the fuse of a sub-array or an array whose strings sum to `isc_array_a` at STC.

    IEC 62548:2016: 1.25·Isc < In <= 2.4·Isc (from memory); NEC 2023: 1.5625·Isc <= In. Where the profile sets no upper
    factor the upper end is infinite and the cable sets it.
    """
    isc = Given("Isc,array", isc_array_a, "A")
    low, high = profile.array_fuse_lower_factor, profile.array_fuse_upper_factor
    lower = _multiple(Symbol.IN_MIN, (low.value, low.cited, low.reference), isc, profile)
    if high.is_set:
        upper = _multiple(Symbol.IN_MAX, (high.value, high.cited, high.reference), isc, profile)
    else:
        upper = Rating(Symbol.IN_MAX, float("inf"), "A", phrase("none"), (), high.cited, high.reference)
    return FuseWindow(lower, not high.is_set, upper, True)


def smallest_rating(
    fuse_window: FuseWindow,
    ratings_a: Sequence[float] | None = None,
    series_name: str = "gpv_fuse_a",
    carried_a: float = 0.0,
) -> Rating | None:
    """Return the smallest rated current in the window, or None where no standard rating lies in it.

    ratings_a: the ratings to choose from in A, by default those of a series of standard_ratings: gPV fuse links
    (IEC 60269-6), or the ratings of NEC 240.6(A). carried_a: the rated current in A that carries the strings in a hot
    enclosure; a rating below it is chosen only where the window holds no larger one.
    """
    choices = series(series_name) if ratings_a is None else ratings_a
    fitting = [i_n_a for i_n_a in choices if fuse_window.holds(i_n_a)]
    coolest = next_at_least(fitting, fuse_window.lower.value)
    if coolest is None:
        return None
    chosen = next_at_least(fitting, carried_a) or coolest
    for_heat = (Given("Icarry/kT", carried_a, "A"),) if chosen > coolest else ()
    iec = series_name == "gpv_fuse_a"
    ends = (fuse_window.lower, fuse_window.upper)
    given = tuple(end.by_formula() for end in ends if isfinite(end.value))
    return Rating(
        Symbol.IN,
        chosen,
        "A",
        _formula(given, for_heat, iec),
        (*given, *for_heat),
        citations(fuse_window.lower.clause, cited(phrase("IEC 60269-6 series") if iec else "NEC 240.6(A)")),
        table("standard_ratings").pick(series=series_name).reference if ratings_a is None else NOTHING,
        origin=Origin.CHOSEN,
        passed_over=_passed_over([each for each in choices if each < chosen], fuse_window, carried_a),
    )


def _passed_over(smaller: Sequence[float], fuse_window: FuseWindow, carried_a: float) -> tuple[Sayable, ...]:
    """Return the nearest ratings below the chosen one: outside the window, or within it and too small when hot."""
    return tuple(
        phrase("{value}: below {least}", value=amount(each, "A"), least=amount(carried_a, "A"))
        if fuse_window.holds(each)
        else phrase("{value}: outside the window", value=amount(each, "A"))
        for each in sorted(smaller, reverse=True)[:SHOWN_COUNT]
    )


def _formula(window: tuple[Given, ...], for_heat: tuple[Given, ...], iec: bool) -> Sayable:
    """Return which rating of the window is chosen, in words."""
    names = {"least": window[0].symbol, "most": window[-1].symbol}
    if len(window) == 1:
        words = (
            phrase("smallest gPV rating from {least}", **names)
            if iec
            else phrase("smallest standard rating from {least}", **names)
        )
    elif iec:
        words = phrase("smallest gPV rating from {least} to {most}", **names)
    else:
        words = phrase("smallest standard rating from {least} to {most}", **names)
    return phrase("{rating}, at least {current}", rating=words, current=for_heat[0].symbol) if for_heat else words


def voltage_min(uoc_max: Rating) -> Rating:
    """Return the least rated DC voltage of fuse link and holder in V: Uoc,max of the string, cold, never Uoc at STC.

    Source: IEC 60269-6, IEC 62548:2016 6.5 (clauses from memory).
    """
    return Rating(
        Symbol.UN_MIN,
        uoc_max.value,
        "V",
        "Uoc,max",
        (uoc_max.as_input(),),
        clauses_from_memory("IEC 60269-6", "IEC 62548:2016 6.5"),
        uoc_max.table_row,
        uoc_max.assumptions,
    )


def carried_current(isc_a: float, strings_per_fuse_count: int, profile: Profile) -> Rating:
    """Return the current in A that a fuse must carry without opening: KI·SG·Isc, SG strings to a fuse.

    Source: the profile's KI.
    """
    ki = profile.isc_factor
    return Rating(
        Symbol.ICARRY,
        ki.value * strings_per_fuse_count * isc_a,
        "A",
        "KI·SG·Isc",
        (
            Given("KI", ki.value, "", profile.said),
            Given("SG", strings_per_fuse_count),
            Given("Isc", isc_a, "A"),
        ),
        ki.cited,
        ki.reference,
    )


def current_when_hot(i_n_a: float, temperature_factor: float | None = None) -> Rating:
    """Return the current in A that a fuse carries in its enclosure: In·kT.

    temperature_factor: the maker's for the temperature there, None for 0.85 (about 60 °C; rated currents hold at 25
    °C). Raises ValueError for a factor outside 0 < kT <= 1. Source: IEC 60269-6, data of the makers (from memory).
    """
    factor = _HOT_FACTOR if temperature_factor is None else temperature_factor
    if not 0 < factor <= 1:
        raise ValueError(f"temperature_factor must be above 0 and at most 1, not {factor}")
    said = (
        ()
        if temperature_factor is not None
        else (phrase("fuse at {factor} of its rated current, enclosure at 60 °C", factor=amount(factor, digits=6)),)
    )
    return Rating(
        Symbol.IN_HOT,
        i_n_a * factor,
        "A",
        "In·kT",
        (Given("In", i_n_a, "A"), Given("kT", factor)),
        from_memory("IEC 60269-6", phrase("data of the maker")),
        assumptions=said,
    )


def breaking_current(isc_joined_a: float, profile: Profile, backfeed_a: float = 0.0) -> Rating:
    """Return the largest current in kA that a DC fuse may have to break: KI·ΣIsc and what the inverter feeds back.

    isc_joined_a: sum in A over all strings that are joined, at STC. Source: IEC 60269-6 (from memory).
    """
    ki = profile.isc_factor
    return Rating(
        Symbol.IK_DC,
        (ki.value * isc_joined_a + backfeed_a) / 1000,
        "kA",
        "KI·ΣIsc + Ibackfeed",
        (
            Given("KI", ki.value, "", profile.said),
            Given("ΣIsc", isc_joined_a, "A"),
            Given("Ibackfeed", backfeed_a, "A"),
        ),
        citations(clause_from_memory("IEC 60269-6"), ki.cited),
        ki.reference,
    )


def fusing_current(i_n_a: float) -> Rating:
    """Return the current in A above which a gPV fuse of rated current `i_n_a` opens within the conventional time.

    1.45·In; the makers' least breaking currents are 1.35 to 1.45·In, of which this is the cautious end. A reverse
    current below it flows on for good: module and cable must carry it. Source: IEC 60269-6 (clause from memory).
    """
    return Rating(
        Symbol.IF,
        _FUSING_FACTOR * i_n_a,
        "A",
        "1.45·In",
        (Given("In", i_n_a, "A"),),
        clause_from_memory(phrase("{standard}, conventional fusing current", standard="IEC 60269-6")),
    )
