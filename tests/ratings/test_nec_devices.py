"""Overcurrent devices, busbars and grounding under the National Electrical Code, against published examples."""

from __future__ import annotations

import pytest

from sld.quantity import Rating
from sld.ratings import array, board, breaker, dc_cable, string_fuse
from sld.ratings.nec import ampacity, busbar, grounding
from sld.ratings.nec.overcurrent import largest_device, largest_service_of_dwelling, smallest_device
from sld.tables.profiles import profile
from sld.tables.table import NoRow, table
from sld.wire_size import SIZES, area_mm2, name_of

NEC = profile("NEC 690")
GUIDE_120 = "https://unanswered.io/guide/what-is-the-120-percent-rule-for-solar-panels"
PERMIT = "https://publicdocs.santa-ana.org/BuildingWeblink/0/doc/520159/Page7.aspx"
BACKFEED = "http://www.altestore.com/forums/index.php/topic,974.0/prev_next,next.html"
EGC = "https://brunsengineering.com/nec-table-250-122/"
EGC_2 = "https://mikeholt.com/newsletters.php?action=reply&inResponseTo=9672&letterID=212"
GEC = "https://www.cooper-electric.com/p/service-equipment-grounding-table"


@pytest.mark.parametrize(
    ("current_a", "continuous_a", "device_a", "source"),
    [
        (32, 40, 40, GUIDE_120),
        (48, 60, 60, PERMIT),
        (144, 180, 200, PERMIT),
        (16, 20, 20, "town permit file, 16 units of 1 A"),
        (36.1, 45.125, 50, "a hair beyond 45 A"),
        (4800, 6000, 6000, "240.6(A), the last"),
    ],
)
def test_device_for_125_percent(current_a: float, continuous_a: float, device_a: float, source: str) -> None:
    needed = breaker.continuous_duty_current(current_a)
    assert needed.value == pytest.approx(continuous_a), source
    chosen = smallest_device(needed)
    assert chosen is not None
    assert chosen.value == device_a


@pytest.mark.parametrize(
    ("exported_a", "continuous_a", "other_a", "least_a"),
    [
        (40, 0, 0, 50),
        (0, 40, 0, 50),
        (0, 0, 40, 40),
        (0, 40, 30, 80),  # 1.25 · 40 + 30: loads that flow for three hours, and the others
        (64, 40, 30, 80),  # 1.25 · 64: sources and loads flow against each other, so the larger counts
        (80, 40, 30, 100),
    ],
)
def test_device_that_sources_and_loads_share(
    exported_a: float, continuous_a: float, other_a: float, least_a: float
) -> None:
    """NEC 2023 210.20(A), 215.3, 705.30(B), from memory; worked by hand."""
    assert breaker.duty_current(exported_a, continuous_a, other_a).value == pytest.approx(least_a)


def test_no_device_above_the_series() -> None:
    assert smallest_device(breaker.continuous_duty_current(4801)) is None


@pytest.mark.parametrize(
    ("capacity_a", "material", "size", "device_a"),
    [
        (40, "Cu", "8", 40),  # a standard rating itself
        (40.1, "Cu", "8", 45),  # the next one up, 240.4(B)
        (765, "Cu", "1000", 800),
        (801, "Cu", "1000", 800),  # above 800 A none that is larger, 240.4(C)
        (999, "Cu", "1000", 800),
        (20, "Cu", "14", 15), (25, "Cu", "12", 20), (35, "Cu", "10", 30), (30, "Al", "10", 25), (20, "Al", "12", 15),
        (12, "Cu", "10", 15),  # corrected ampacity below the cap
        (5, "Cu", "14", 10),
    ],
)  # fmt: skip
def test_largest_device_for_a_conductor(capacity_a: float, material: str, size: str, device_a: float) -> None:
    """NEC 240.4(B), (C), from memory; (D) as on public ampacity charts."""
    allowed = largest_device(capacity_a, material, size)
    assert allowed is not None
    assert allowed.value == device_a


@pytest.mark.parametrize(
    ("service_a", "copper", "aluminium"),
    [
        (100, "4", "2"), (110, "3", "1"), (125, "2", "1/0"), (150, "1", "2/0"), (175, "1/0", "3/0"),
        (200, "2/0", "4/0"), (225, "3/0", "250"), (250, "4/0", "300"), (300, "250", "350"), (350, "350", "500"),
        (400, "400", "600"),
    ],
)  # fmt: skip
def test_service_of_a_dwelling(service_a: float, copper: str, aluminium: str) -> None:
    """NEC Table 310.12(A), from memory: the sizes that the 83 % rule comes to with the 75 °C column."""
    for material, size in (("Cu", copper), ("Al", aluminium)):
        largest = largest_service_of_dwelling(ampacity.tabulated(material, size, 75).value)
        assert largest is not None
        assert largest.value == service_a
        smaller = SIZES[SIZES.index(size) - 1]
        below = largest_service_of_dwelling(ampacity.tabulated(material, smaller, 75).value)
        assert below is None or below.value < service_a


def test_a_conductor_without_ampacity_is_refused() -> None:
    with pytest.raises(ValueError, match="capacity_a"):
        largest_device(0, "Cu", "10")


@pytest.mark.parametrize(
    ("bus_a", "main_a", "breaker_a", "inverter_a", "kilowatts"),
    [(200, 200, 40, 32, 7.68), (225, 200, 70, 56, 13.44)],
)
def test_120_percent_of_the_busbar(
    bus_a: float, main_a: float, breaker_a: float, inverter_a: float, kilowatts: float
) -> None:
    largest = board.largest_source_breaker_120(bus_a, main_a)
    assert largest.value == pytest.approx(breaker_a), GUIDE_120
    assert largest.value / 1.25 * 240 / 1000 == pytest.approx(kilowatts)
    least = busbar.least_at_opposite_end(main_a, [inverter_a])
    assert least.value == pytest.approx(bus_a)


@pytest.mark.parametrize(
    ("main_a", "asked_a", "least_a"), [(225, 160, 225), (200, 240, 240), (200, 200, 200), (110, None, 110)]
)
def test_a_busbar_stands_the_device_that_protects_it(main_a: float, asked_a: float | None, least_a: float) -> None:
    """408.36 (from memory), and once more in 705.12(B)(3), as
    https://forums.mikeholt.com/threads/2020-705-12-b-3-3.2576650/ quotes it."""
    asked = None if asked_a is None else busbar.least_for_sum_of_devices([asked_a])
    assert busbar.protected(main_a, asked).value == least_a
    with pytest.raises(ValueError, match="main_a"):
        busbar.protected(0)


@pytest.mark.parametrize(
    ("main_a", "sources_a", "any_a", "opposite_a"),
    [(200, [32], 240, 200), (200, [32, 32], 280, 280 / 1.2), (100, [], 100, 100 / 1.2)],
)
def test_busbar_by_position(main_a: float, sources_a: list[float], any_a: float, opposite_a: float) -> None:
    """The second row is the case of https://forums.mikeholt.com/threads/120-rule-and-end-of-busbar.2580629/page-2:
    200 A + 1.25 · 64 A = 280 A, or 233 A at the opposite end."""
    assert busbar.least_at_any_position(main_a, sources_a).value == pytest.approx(any_a)
    assert busbar.least_at_opposite_end(main_a, sources_a).value == pytest.approx(opposite_a)


def test_busbar_by_the_sum_of_devices() -> None:
    """705.12(B)(3), from memory: loads and sources, not the main."""
    assert busbar.least_for_sum_of_devices([40, 40, 20]).value == 100
    with pytest.raises(ValueError, match="at least one"):
        busbar.least_for_sum_of_devices([])
    with pytest.raises(ValueError, match="main_a"):
        busbar.least_at_any_position(0, [32])


@pytest.mark.parametrize(
    ("device_a", "copper", "aluminium"),
    [(15, "14", "12"), (20, "12", "10"), (60, "10", "8"), (61, "8", "6"), (100, "8", "6"), (200, "6", "4"),
     (300, "4", "2"), (400, "3", "1"), (500, "2", "1/0"), (600, "1", "2/0"), (800, "1/0", "3/0"), (1000, "2/0", "4/0"),
     (1200, "3/0", "250"), (1600, "4/0", "350"), (2000, "250", "400"), (2500, "350", "600"), (4000, "500", "750")],
)  # fmt: skip
def test_equipment_grounding_conductor(device_a: float, copper: str, aluminium: str) -> None:
    assert grounding.equipment_grounding(device_a).value == pytest.approx(area_mm2(copper)), EGC
    assert grounding.equipment_grounding(device_a, "Al").value == pytest.approx(area_mm2(aluminium)), EGC


@pytest.mark.parametrize(
    ("device_a", "copper"), [(30, "10"), (70, "8"), (110, "6"), (225, "4"), (350, "3"), (450, "2")]
)
def test_equipment_grounding_conductor_by_a_second_source(device_a: float, copper: str) -> None:
    assert name_of(grounding.equipment_grounding(device_a).value) == f"{copper} AWG", EGC_2


def test_equipment_grounding_conductor_beyond_the_table() -> None:
    with pytest.raises(NoRow):
        grounding.equipment_grounding(4001)


@pytest.mark.parametrize(
    ("device_a", "laid", "needed", "size"),
    [
        (40, "8", "8", "10 AWG"),
        (40, "4", "8", "6 AWG"),  # 5.26 mm² · 21.15/8.37 = 13.3 mm²
        (40, "6", "8", "8 AWG"),  # 5.26 mm² · 13.3/8.37 = 8.36 mm²
        (20, "2", "12", "2 AWG"),  # never above the conductors: 3.31 · 33.6/3.31 = 33.6
    ],
)
def test_grounding_conductor_grows_with_its_circuit(device_a: float, laid: str, needed: str, size: str) -> None:
    """NEC 250.122(B): in proportion to the circular mils of the ungrounded conductors."""
    least = grounding.equipment_grounding(device_a)
    assert name_of(grounding.increased(least, area_mm2(laid), area_mm2(needed)).value) == size


@pytest.mark.parametrize(
    ("material", "service", "electrode", "size"),
    [
        ("Cu", "2", "", "8"), ("Cu", "1", "", "6"), ("Cu", "1/0", "", "6"), ("Cu", "3/0", "", "4"),
        ("Cu", "4/0", "", "2"), ("Cu", "350", "", "2"), ("Cu", "400", "", "1/0"), ("Cu", "600", "", "1/0"),
        ("Cu", "700", "", "2/0"), ("Al", "2/0", "", "6"), ("Al", "4/0", "", "4"), ("Al", "250", "", "4"),
        ("Al", "300", "", "2"), ("Al", "750", "", "1/0"), ("Al", "1000", "", "2/0"),
        ("Cu", "3/0", "rod", "6"), ("Cu", "600", "rod", "6"), ("Cu", "600", "foundation", "4"),
        ("Cu", "600", "ring", "2"), ("Cu", "2", "rod", "8"),
    ],
)  # fmt: skip
def test_grounding_electrode_conductor(material: str, service: str, electrode: str, size: str) -> None:
    least = grounding.grounding_electrode(material, area_mm2(service), electrode)
    assert name_of(least.value) == f"{size} AWG", GEC


def test_first_aluminium_row_is_1_0_and_not_1_as_one_page_prints() -> None:
    """GEC prints `1 or smaller`, and the next row begins with 2/0: 1/0 would have no row."""
    assert name_of(grounding.grounding_electrode("Al", area_mm2("1/0"), "").value) == "8 AWG"


def test_bonding_jumper_beyond_the_table_is_an_eighth() -> None:
    """NEC 250.102(C)(1) note: 12.5 percent of the area of the largest ungrounded conductor (from memory)."""
    assert grounding.bonding_jumper("Cu", area_mm2("3/0")).value == pytest.approx(area_mm2("4"))
    assert grounding.bonding_jumper("Cu", 2 * area_mm2("750")).value == pytest.approx(area_mm2("750") / 4)


@pytest.mark.parametrize(
    ("isc_a", "least_a", "device_a", "source"),
    [
        (8.73, 13.62, 15, "http://325603.net/?p=815"),
        (8.5, 13.28, 15, "https://aitefuse.com/news/how-to-choose-the-right-ampers-current-dc-circuit-breaker-or-pv-fuse"),
        (9.5, 14.84, 15, "690.9(B) worked by hand"),
        (11.5, 17.97, 20, "690.9(B) worked by hand"),
        (13.9, 21.72, 25, "690.9(B) worked by hand"),
        (18.5, 28.91, 30, "690.9(B) worked by hand"),
        (9.6, 15.0, 15, "exactly a standard rating"),
    ],
)  # fmt: skip
def test_string_fuse_is_156_percent(isc_a: float, least_a: float, device_a: float, source: str) -> None:
    window = string_fuse.window(isc_a, 35, NEC)
    assert window.lower.value == pytest.approx(least_a, abs=0.03), source
    chosen = string_fuse.smallest_rating(window, series_name=NEC.dc_fuse_series.text)
    assert chosen is not None
    assert chosen.value == device_a


def test_one_step_of_125_percent_is_not_enough() -> None:
    """A published example stops after the first step: 10.625 A for 8.5 A of Isc. 15 A, not 12 A, is the device."""
    window = string_fuse.window(8.5, 20, NEC)
    assert window.lower.value > 1.25 * 8.5
    assert not window.holds(12)


def test_an_empty_window_has_no_fuse() -> None:
    assert string_fuse.smallest_rating(string_fuse.window(14.0, 20, NEC), series_name="nec_240_6_a") is None


@pytest.mark.parametrize(("strings", "total_a", "allowed"), [(2, 5.34, True), (3, 8.76, False)])
def test_fuse_and_backfeed_against_the_module(strings: int, total_a: float, allowed: bool) -> None:
    """Isc 1.22 A, largest series fuse 7 A: the device of the array, 1.5625 · n · Isc, feeds back too."""
    backfeed_a = 1.5625 * strings * 1.22
    reverse = array.reverse_current(strings, 1.22, NEC, backfeed_a)
    assert reverse.value == pytest.approx(total_a, abs=0.01), BACKFEED
    assert (reverse.value <= 7) is allowed


def test_conductors_of_five_strings() -> None:
    """5 · 3 A: 23.4 A; https://www.altestore.com/forums/index.php/topic,1356.msg4792.html."""
    needed = dc_cable.uncorrected_current_min(5, 3.0, NEC)
    assert needed is not None
    assert needed.value == pytest.approx(23.4, abs=0.05)


def test_array_fuse_has_no_upper_end_and_still_says_why() -> None:
    window = string_fuse.array_window(30.0, NEC)
    chosen = string_fuse.smallest_rating(window, series_name="nec_240_6_a")
    assert isinstance(chosen, Rating)
    assert chosen.value == 50  # 46.875 A
    assert "In,max" not in str(chosen.trace())


def test_standard_ratings_are_those_of_the_code() -> None:
    """Spot checks of 240.6(A): 45, 110, 225 and 350 A are there, 32, 63 and 160 A are not."""
    ratings = table("standard_ratings").pick(series="nec_240_6_a")["values"].split(";")
    assert {"15", "45", "110", "225", "350"} <= set(ratings)
    assert not {"32", "63", "160"} & set(ratings)
