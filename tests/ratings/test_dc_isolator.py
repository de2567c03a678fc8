"""Least ratings of the DC switch-disconnector."""

from __future__ import annotations

import pytest

from sld.ratings.dc_isolator import category, current_min, smallest_rating, voltage_min
from sld.ratings.string import uoc_max_by_table
from sld.tables.profiles import profile

GUIDENR = (
    "http://www.photovoltaique.guidenr.fr/informations_techniques/dimensionnement-photovoltaique-continu/"
    "calibrage-coupure-sectionnement.php"
)


@pytest.mark.parametrize(
    ("name", "strings", "isc", "current"),
    [
        ("cautious", 1, 8.0, 10.0),
        ("IEC 60364-7-712", 2, 10.0, 25.0),
        ("BS 7671", 2, 10.0, 25.0),
        ("NEC 690", 2, 10.0, 31.25),
    ],
)
def test_current_is_1_25_isc_and_1_5625_under_the_nec(name: str, strings: int, isc: float, current: float) -> None:
    # GUIDENR: at least 1.25·Isc at STC; NEC 690.13 with 690.8(B) (from memory)
    assert current_min(strings, isc, profile(name)).value == pytest.approx(current), GUIDENR


def test_voltage_is_the_cold_voltage() -> None:
    uoc = uoc_max_by_table(16, 51.7, -10)
    assert voltage_min(uoc).value == uoc.value


@pytest.mark.parametrize(
    ("isc", "rating"),
    [(8.0, 10), (8.0001, 16), (12.8, 16), (12.80001, 20), (504.0, 630), (504.1, None)],  # on a rating and a hair beyond
)
def test_smallest_rating(isc: float, rating: float | None) -> None:
    chosen = smallest_rating(current_min(1, isc, profile("cautious")))
    assert (chosen.value if chosen else None) == rating


def test_smallest_rating_from_given_ratings_in_any_order() -> None:
    chosen = smallest_rating(current_min(1, 20.0, profile("cautious")), (63.0, 25.0, 32.0))
    assert chosen is not None
    assert chosen.value == 25


@pytest.mark.parametrize(("strings", "name"), [(1, "DC-PV1"), (2, "DC-PV2"), (5, "DC-PV2")])
def test_category(strings: int, name: str) -> None:
    # https://publicdocs.santa-ana.org/BuildingWeblink/0/doc/351252/Page10.aspx
    assert category(strings).value == name
