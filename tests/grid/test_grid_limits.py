"""Limits of the grid rules: at each one the sign decides; published cases lead to the procedure that they are for."""

from __future__ import annotations

import pytest

from sld.grid import GENERIC, country, known
from sld.grid.decide import Facts, deciding, met
from sld.grid.entry import AskedPaper, Condition, Limit
from sld.grid.notices import AskedNotice
from sld.grid.outcome import Outcome
from sld.grid.quantity import Quantity, holds
from sld.grid.settings import SettingsSet

Conditional = Limit | AskedPaper | SettingsSet | AskedNotice
CODES = (*known(), GENERIC)
COUNTRIES = ("AT", "AU", "BE", "CH", "DE", "ES", "FR", "GB", "IE", "IT", "NL", "NZ", "PL", "US", "ZA")
BELOW_AT_ABOVE = {
    "<=": (True, True, False),
    "<": (True, False, False),
    ">": (False, False, True),
    ">=": (False, True, True),
}
"""What each sign means, in words: at most, less than, more than, at least."""


def of_country(code: str) -> list[tuple[str, Conditional, int]]:
    """Every entry of a country once for each of its conditions."""
    rules = country(code)
    entries: list[Conditional] = [*rules.limits(), *rules.papers, *rules.sets, *rules.notices]
    return [(code, entry, place) for entry in entries for place in range(len(entry.when))]


CONDITIONS = [each for code in CODES for each in of_country(code)]


def satisfying(condition: Condition) -> float:
    """A value for which a condition holds, well off its limit."""
    return 2 * condition.base_limit + 1 if condition.sign.value in (">", ">=") else condition.base_limit / 2


def test_no_country_is_lost_and_the_generic_rules_are_none() -> None:
    assert set(COUNTRIES) <= set(known())
    assert GENERIC not in known()


def test_every_country_has_limits() -> None:
    assert {code for code, _, _ in CONDITIONS} == set(CODES)


@pytest.mark.parametrize(
    ("code", "entry", "place"), CONDITIONS, ids=[f"{code}-{entry.name}-{place}" for code, entry, place in CONDITIONS]
)
def test_below_at_and_above_each_limit_the_sign_decides(code: str, entry: Conditional, place: int) -> None:
    """All other conditions of the entry hold; a quantity that has two limits in one entry is left between them."""
    decisive = entry.when[place]
    limit = decisive.base_limit
    step = limit * 0.001 or 1.0
    phases = (entry.phases if isinstance(entry, Limit) else None) or 3
    others = {each.quantity: satisfying(each) for each in entry.when if each.quantity is not decisive.quantity}
    found = tuple(
        met(entry, Facts(phases, {**others, decisive.quantity: value})) for value in (limit - step, limit, limit + step)
    )
    assert found == BELOW_AT_ABOVE[decisive.sign.value], f"{code} {entry.name}"


def test_the_same_number_is_up_to_in_one_country_and_from_in_the_next() -> None:
    """Germany above 30 kVA (VDE-AR-N 4105), Austria from 30 kVA (Vorarlberg Netz): external protection."""
    at = Facts(3, {Quantity.APPARENT_POWER: 30_000.0})
    assert [deciding(country(code).interface, at).outcome for code in ("DE", "AT")] == [
        Outcome.BUILT_IN_PROTECTION,
        Outcome.EXTERNAL_PROTECTION,
    ]


def test_noise_of_the_arithmetic_is_not_above_a_limit() -> None:
    assert holds(0.1 + 0.2, country("DE").procedures[0].when[0].sign, 0.3)  # 0.30000000000000004


@pytest.mark.parametrize("code", CODES)
def test_an_entry_for_one_kind_of_supply_holds_for_no_other(code: str) -> None:
    for limit in country(code).limits():
        if limit.phases is not None:
            values = {each.quantity: satisfying(each) for each in limit.when}
            assert met(limit, Facts(limit.phases, values))
            assert not met(limit, Facts(4 - limit.phases, values))


def system(phases: int, kilo: float, kwp: float | None = None, export_kw: float | None = None) -> Facts:
    """A system of inverters alone: power in kW = kVA, modules in kWp, feed-in limit in kW, lines alike."""
    line = 1 if phases == 1 else 3
    export = kilo if export_kw is None else export_kw
    values = {
        Quantity.LINE_CURRENT: kilo * 1000 / (line * 230),
        Quantity.LINE_POWER: kilo * 1000 / line,
        Quantity.APPARENT_POWER: kilo * 1000,
        Quantity.ACTIVE_POWER: kilo * 1000,
        Quantity.ARRAY_POWER: (kilo if kwp is None else kwp) * 1000,
        Quantity.EXPORT_POWER: export * 1000,
        Quantity.LINE_EXPORT: export * 1000 / line,
    }
    return Facts(phases, values)


PUBLISHED = [
    # 9 kW three-phase is 13.04 A a phase, at most 16 A: westernpower.co.uk, G98 connection procedures
    ("GB", system(3, 9), "connect_and_notify"),
    # 3.68 kW a phase: same page; from 50 kW the standard form: spenergynetworks.co.uk, G99 generator connections
    ("GB", system(1, 3.68), "connect_and_notify"),
    ("GB", system(1, 3.7), "apply_short_form"),
    ("GB", system(3, 11.04), "connect_and_notify"),
    ("GB", system(3, 49.9), "apply_short_form_three_phases"),
    ("GB", system(3, 50), "apply"),
    # esbnetworks.ie: micro up to 6 kVA single-phase and 11 kVA three-phase, mini up to 17 and 50 kVA
    ("IE", system(1, 6), "micro"),
    ("IE", system(3, 11), "micro_three_phases"),
    ("IE", system(1, 17), "mini"),
    ("IE", system(3, 50), "mini_three_phases"),
    ("IE", system(3, 200), "small"),
    # bonn-netz.de: 800 VA and 2 kWp behind one meter
    ("DE", system(1, 0.8, 2), "plug_in"),
    ("DE", system(1, 0.8, 2.1), "apply"),
    ("DE", system(1, 0.9, 2), "apply"),
    # e-control.at: below 0.8 kW, up to 20 kW
    ("AT", system(1, 0.79), "micro"),
    ("AT", system(1, 0.8), "simplified"),
    ("AT", system(3, 20), "simplified"),
    ("AT", system(3, 20.1), "apply"),
    # tba-energie.ch from 3.6 kVA (energiegossau.ch: above 3.7 kVA); ved.ch: plug-in up to 600 W
    ("CH", system(1, 0.6), "plug_in"),
    ("CH", system(1, 3.5), "notice"),
    ("CH", system(1, 3.6), "request"),
    # UEM, form up to 36 kVA
    ("FR", system(3, 36), "short_form"),
    ("FR", system(3, 36.1), "apply"),
    ("FR", system(1, 3, export_kw=0), "no_export"),
    # enel.it: below 350 W, up to 800 W; GSE, Modello Unico up to 50 kW
    ("IT", system(1, 0.34), "plug_in_small"),
    ("IT", system(1, 0.35), "plug_in"),
    ("IT", system(1, 0.8), "plug_in"),
    ("IT", system(3, 50), "modello_unico"),
    ("IT", system(3, 51), "apply"),
    # can-biorenovables.com: above 15 kW with surplus
    ("ES", system(3, 15), "without_permit"),
    ("ES", system(3, 15.1), "permit"),
    ("ES", system(3, 20, export_kw=0), "without_permit"),
    # coteqnetbeheer.nl: from 0.8 kW
    ("NL", system(1, 0.79), "below"),
    ("NL", system(1, 0.8), "register"),
    # tauron-dystrybucja.pl: up to 50 kW
    ("PL", system(3, 50), "notify"),
    ("PL", system(3, 50.1), "apply"),
    # ausnetservices.com.au: 10 kVA with 5 kW export a phase, 30 kVA with 15 kW on three
    ("AU", system(1, 10, export_kw=5), "quick_approval"),
    ("AU", system(1, 10), "apply"),
    ("AU", system(3, 30, export_kw=15), "quick_approval_three_phases"),
    # Westpower, Part 1A up to 10 kW
    ("NZ", system(3, 10), "part_1a"),
    ("NZ", system(3, 10.1), "part_2"),
    # studylib.net/doc/18811188, Level 1 up to 10 kW
    ("US", system(1, 10), "small_inverter"),
    ("US", system(1, 10.1), "apply"),
    # NRS 097-2-3 (scribd.com/document/738860076): 13.8 and 100 kVA; City of Cape Town: below 1 MVA
    ("ZA", system(3, 13.8), "a1"),
    ("ZA", system(3, 100), "a2"),
    ("ZA", system(3, 999), "a3"),
    ("ZA", system(3, 1000), "large"),
]
"""Country, system, procedure: limits as the page beside it prints them."""


@pytest.mark.parametrize(("code", "facts", "name"), PUBLISHED)
def test_published_limits_lead_to_the_procedure(code: str, facts: Facts, name: str) -> None:
    found = deciding(country(code).procedures, facts)
    assert found is not None
    assert found.name == name


def test_a_quantity_that_is_not_there_is_below_every_limit() -> None:
    """A system without single-phase units is not unbalanced."""
    assert deciding(country("DE").imbalance, Facts(3, {})) is None


def test_where_sources_disagree_the_cautious_limit_decides_and_both_are_kept() -> None:
    """Switzerland: one operator asks from 3.6 kVA, another above 3.7 kVA."""
    request = country("CH").procedures[0]
    assert [(each.limit, each.sign.value) for each in request.when] == [(3.6, ">=")]
    assert [(each.limit, each.sign.value, each.source) for each in request.differs] == [(3.7, ">", "gossau")]
    assert request.standing.name == "DISPUTED"
