"""Boards, meters and current transformers; inverter currents that load them."""

from __future__ import annotations

import pytest

from sld.ratings.board import (
    both_ways_load,
    busbar_load,
    diversity_limit,
    generation_load,
    largest_source_breaker_120,
    standard_assembly_current,
)
from sld.ratings.breaker import current_by_diversity
from sld.ratings.inverter import current_at_low_voltage, declared_current, design_current
from sld.ratings.meter import (
    direct_meter_current,
    metered_behind_transformer,
    metered_current,
    transformer_lead_burden,
    transformer_primary,
    transformer_ratio,
)


def test_a_board_for_generation_alone_carries_the_generation() -> None:
    # IEC 60364-5-55 551.7.2 (from memory): the sum only where current flows from both sides
    assert generation_load(104.0).value == 104


@pytest.mark.parametrize(("diversity", "least_a"), [(1.0, 20), (0.8, 25)])
def test_rated_current_beside_others(diversity: float, least_a: float) -> None:
    # IEC 61439-1:2020 5.4 (from memory): Ib <= RDF · In
    assert current_by_diversity(20, diversity).value == pytest.approx(least_a)
    assert diversity_limit(least_a, diversity).value >= 20 - 1e-9


@pytest.mark.parametrize("factor", [0, 1.01])
def test_refused_diversity(factor: float) -> None:
    with pytest.raises(ValueError, match="diversity_factor"):
        diversity_limit(20, factor)


def test_three_phase_design_current() -> None:
    # 20 kVA at 400 V: 28.87 A, 32.08 A at 0.9 Un (own computation)
    current = design_current(3, 400, s_max_va=20_000)
    assert current.value == pytest.approx(28.8675, abs=1e-4)
    assert current_at_low_voltage(current.value).value == pytest.approx(32.075, abs=1e-3)
    assert current.assumptions


def test_the_declared_current_wins() -> None:
    # IEC 60364-7-712:2017 712.433 (from memory)
    current = design_current(3, 400, s_max_va=20_000, i_max_a=32)
    assert current == declared_current(32)
    assert not current.assumptions


@pytest.mark.parametrize(("phases", "u_v", "s_va"), [(2, 230, 1), (1, 0, 1), (1, 230, 0), (1, 230, None)])
def test_refused_design_current(phases: int, u_v: float, s_va: float | None) -> None:
    with pytest.raises(ValueError, match=r"must|neither"):
        design_current(phases, u_v, s_max_va=s_va)


@pytest.mark.parametrize("factor", [0, 1.01])
def test_refused_voltage_factor(factor: float) -> None:
    with pytest.raises(ValueError, match="voltage_factor"):
        current_at_low_voltage(10, factor)


def test_busbar_carries_network_and_sources() -> None:
    # IEC 60364-5-55 551.7.2 (from memory): InA >= In + Ig
    assert busbar_load(63, [16, 16, 32]).value == 127
    assert busbar_load(63, []).value == 63


@pytest.mark.parametrize(("load_a", "rating_a"), [(125, 125), (125.1, 160), (1600, 1600), (1601, None)])
def test_standard_assembly(load_a: float, rating_a: float | None) -> None:
    chosen = standard_assembly_current(load_a)
    assert (None if chosen is None else chosen.value) == rating_a


@pytest.mark.parametrize(("busbar_a", "main_a", "breaker_a"), [(225, 200, 70), (100, 150, 0)])
def test_rule_of_120_percent(busbar_a: float, main_a: float, breaker_a: float) -> None:
    # 1.2 times the busbar less the main device (NEC 2023 705.12(B)(2), own calculation)
    assert largest_source_breaker_120(busbar_a, main_a).value == pytest.approx(breaker_a)


@pytest.mark.parametrize(("current_a", "meter_a"), [(16, 60), (60, 60), (60.1, 80), (100, 100), (100.1, None)])
def test_direct_meter(current_a: float, meter_a: float | None) -> None:
    # trade ranges of IEC 62053-21 meters (from memory)
    chosen = direct_meter_current(current_a)
    assert (None if chosen is None else chosen.value) == meter_a


def test_meter_stands_the_larger_of_import_and_export() -> None:
    assert metered_current(63, 80).value == 80
    assert metered_current(100, 80).value == 100


@pytest.mark.parametrize(
    ("device_a", "transformer_a", "elsewhere_a", "export_a", "flows_a"),
    [(630, 577, 0, 0, 577), (500, 577, 0, 0, 500), (630, 577, 40, 0, 617), (630, 577, 60, 0, 630),
     (630, 577, 0, 600, 600)],
)  # fmt: skip
def test_behind_a_transformer_no_more_flows_than_it_gives(device_a, transformer_a, elsewhere_a, export_a, flows_a):
    # own computation: the lesser of device and sources, the larger of both directions
    assert metered_behind_transformer(device_a, transformer_a, elsewhere_a, export_a).value == flows_a


@pytest.mark.parametrize(
    ("current_a", "primary_a"), [(100, 100), (100.1, 125), (145, 150), (7500, 7500), (7501, None), (1, 10)]
)
def test_current_transformer(current_a: float, primary_a: float | None) -> None:
    # IEC 61869-2: 10-12.5-15-20-25-30-40-50-60-75 and decimal multiples (from memory)
    chosen = transformer_primary(current_a)
    assert (None if chosen is None else chosen.value) == primary_a
    assert chosen is None or [(each.symbol, each.value) for each in chosen.given] == [("Im", current_a)]


def test_ratio() -> None:
    assert transformer_ratio(200).value == 40


@pytest.mark.parametrize(("secondary_a", "section_mm2", "burden_va"), [(5, 2.5, 3.7), (5, 1.5, 6.1), (1, 2.5, 0.15)])
def test_lead_burden(secondary_a: float, section_mm2: float, burden_va: float) -> None:
    # I² · 2 · 10 m · r with IEC 60228 class 2 (own computation by Ohm's law)
    assert transformer_lead_burden(secondary_a, 10, section_mm2).value == pytest.approx(burden_va, rel=0.015)


def test_what_a_stretch_carries_that_is_fed_from_both_sides() -> None:
    # IEC 60364-5-55 551.7.2: In + Ig, 16 A and 12.2 A
    assert both_ways_load(16, 12.2).value == pytest.approx(28.2)
