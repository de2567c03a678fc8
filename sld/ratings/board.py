"""What a distribution board has to carry when sources feed it as well as the network."""

from __future__ import annotations

from collections.abc import Sequence

from sld.citation import Mark, cited, from_memory
from sld.quantity import Given, Origin, Rating
from sld.ratings.domain import require_not_negative, require_positive
from sld.ratings.passed_over import below
from sld.ratings.symbol import Symbol
from sld.tables.table import next_at_least, series
from sld.words import phrase

__all__ = [
    "both_ways_load",
    "busbar_load",
    "diversity_limit",
    "generation_load",
    "largest_source_breaker_120",
    "standard_assembly_current",
]


def busbar_load(incomer_i_n_a: float, source_currents_a: Sequence[float]) -> Rating:
    """Return the least rated current InA in A of an assembly: the incoming device plus every source that feeds it.

    source_currents_a: rated currents of the generators in A (all, no diversity). Raises ValueError for an incomer of
    zero or less or a negative source. Source: IEC 60364-5-55 551.7.2; BS 7671:2018+A2 551.7.2 (formula from memory).
    """
    require_positive(incomer_i_n_a=incomer_i_n_a)
    for source_a in source_currents_a:
        require_not_negative(source_a=source_a)
    given = [Given("In", incomer_i_n_a, "A", phrase("incoming device"))]
    given += [Given(f"Ig{place}", source_a, "A") for place, source_a in enumerate(source_currents_a, start=1)]
    clause = cited("IEC 60364-5-55 551.7.2", "BS 7671:2018+A2 551.7.2", mark=Mark.FORMULA_FROM_MEMORY)
    return Rating(Symbol.INA_LEAST, incomer_i_n_a + sum(source_currents_a), "A", "In + Σ Ig", tuple(given), clause)


def both_ways_load(i_n_a: float, source_a: float) -> Rating:
    """Return the current in A that a stretch of cable with loads along it may carry: that of its protective device and
    of the generation at its other end together.

    Raises ValueError for a device of zero or less or a negative source. Source: IEC 60364-5-55 551.7.2, Iz ≥ In + Ig
    (from memory); BS 7671:2018 551.7.2 (ii).
    """
    require_positive(i_n_a=i_n_a)
    require_not_negative(source_a=source_a)
    given = (Given("In", i_n_a, "A"), Given("Σ Ig", source_a, "A"))
    clause = cited("IEC 60364-5-55 551.7.2", "BS 7671:2018+A2 551.7.2", mark=Mark.FORMULA_FROM_MEMORY)
    return Rating(Symbol.I_BOTH, i_n_a + source_a, "A", "In + Σ Ig", given, clause)


def generation_load(source_a: float) -> Rating:
    """Return the least rated current InA in A of an assembly that only generators feed: what they give together.

    No part of the busbar then carries the current of the incoming device on top. Raises ValueError at zero or less.
    Source: IEC 60364-5-55 551.7.2 (the sum is asked for where current flows from both sides; from memory).
    """
    require_positive(source_a=source_a)
    clause = from_memory("IEC 60364-5-55 551.7.2", remark=phrase("generation only"))
    return Rating(Symbol.INA_LEAST, source_a, "A", "Σ Ig", (Given("Σ Ig", source_a, "A"),), clause)


def diversity_limit(i_n_a: float, diversity_factor: float) -> Rating:
    """Return the current in A that an outgoing circuit of an assembly carries for long beside all others: RDF · In.

    Inverters run together at full load, so that no diversity helps them. Raises ValueError for a current of zero or
    less or a factor outside 0 < RDF <= 1. Source: IEC 61439-1:2020 5.4 (from memory).
    """
    require_positive(i_n_a=i_n_a, diversity_factor=diversity_factor)
    if diversity_factor > 1:
        raise ValueError(f"diversity_factor must not be above 1: {diversity_factor}")
    given = (Given("RDF", diversity_factor), Given("In", i_n_a, "A"))
    return Rating(
        Symbol.IN_RDF,
        diversity_factor * i_n_a,
        "A",
        "RDF · In",
        given,
        from_memory("IEC 61439-1:2020 5.4"),
    )


def standard_assembly_current(busbar_load_a: float) -> Rating | None:
    """Return the smallest common assembly rating InA in A of at least the load, None above the series.

    Raises ValueError for a load of zero or less. Source: common ratings of IEC 61439 assemblies.
    """
    require_positive(busbar_load_a=busbar_load_a)
    values = series("assembly_a")
    value = next_at_least(values, busbar_load_a)
    if value is None:
        return None
    given = (Given("InA,least", busbar_load_a, "A"),)
    return Rating(
        Symbol.INA,
        value,
        "A",
        phrase("smallest InA ≥ InA,least"),
        given,
        cited("IEC 61439", remark=phrase("common ratings")),
        origin=Origin.CHOSEN,
        passed_over=below(values, busbar_load_a, "A"),
    )


def largest_source_breaker_120(busbar_a: float, main_breaker_a: float) -> Rating:
    """Return the largest 125 % source current in A that a busbar fed from both ends takes.

    1.2 · Ibus − Imain, at least 0. National Electrical Code only, source breaker at the end opposite the main.
    Raises ValueError at zero or less.
    Source: NEC 2023 705.12(B)(2) (sub-number disputed between public pages).
    """
    require_positive(busbar_a=busbar_a, main_breaker_a=main_breaker_a)
    given = (Given("Ibus", busbar_a, "A"), Given("Imain", main_breaker_a, "A"))
    value = max(0.0, 1.2 * busbar_a - main_breaker_a)
    return Rating(Symbol.IG_125, value, "A", "1.2 · Ibus − Imain", given, cited("NEC 2023 705.12(B)(2)"))
