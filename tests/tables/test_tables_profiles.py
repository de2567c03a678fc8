"""The profiles against the secondary sources that restate the standards; cautious is the stricter of both IEC ones."""

from __future__ import annotations

from dataclasses import fields

import pytest

from sld.tables.profiles import PROFILE_NAMES, Profile, ProfileValue, profile
from sld.tables.table import NoRow, table

SOLAR_FUSES = "http://www.solarsaarthi.com/selection-and-sizing-of-solar-dc-fuses-for-solar-pv-rooftop-projects/4/"
NEC_CURRENTS = "http://www.pvstudent.com/blog/2016/03/05/PV-Currents-6908A1-and-6908B1.aspx"
NEC_690_9 = "https://iaeimagazine.org/magazine/2018/02/20/overcurrent-protection-and-disco-oddities/"
RISE = "NT WorkSafe on AS/NZS 4777.1:2016 clause 3.3.3"
STRING_FUSING = "https://elektroteka-staging.pages.dev/zdroje/citace/csn-33-2000-7-712-ed-2"
OMISSION = "https://studylibit.com/doc/815799/nin-2015-norm-corrigendum-2016-it-7-12-4"
NUMBERS = [field.name for field in fields(Profile) if field.name not in ("name",)]


@pytest.mark.parametrize(
    ("name", "rule", "value", "source"),
    [
        ("IEC 62548-1", "fuse_lower_factor", 1.5, SOLAR_FUSES),
        ("IEC 62548-1", "fuse_upper_factor", 2.4, SOLAR_FUSES),
        ("IEC 62548-1", "fuse_need_isc_factor", 1.0, SOLAR_FUSES),
        ("IEC 60364-7-712", "fuse_need_from_strings_count", 3, STRING_FUSING),
        ("IEC 60364-7-712", "fuse_need_ocpr_factor", 1.35, "IEC 60364-7-712:2017, from memory"),
        ("IEC 60364-7-712", "cable_current_factor", 1.25, OMISSION),
        ("BS 7671", "cable_current_factor", 1.25, OMISSION),
        ("NEC 690", "fuse_lower_factor", 1.25 * 1.25, NEC_CURRENTS),
        ("NEC 690", "cable_uncorrected_factor", 1.25 * 1.25, NEC_CURRENTS),
        ("NEC 690", "isc_factor", 1.25, NEC_CURRENTS),
        ("NEC 690", "fuse_need_isc_factor", 1.25, NEC_690_9),
        ("AS/NZS 5033", "ac_rise_limit_percent", 2, RISE),
    ],
)
def test_values_of_the_profiles(name: str, rule: str, value: float, source: str) -> None:
    assert getattr(profile(name), rule).value == value, source


@pytest.mark.parametrize("name", PROFILE_NAMES)
def test_every_profile_is_whole_and_cites_a_clause_on_each_value(name: str) -> None:
    for rule in NUMBERS:
        value: ProfileValue = getattr(profile(name), rule)
        assert value.clause
        assert value.rule == rule
        assert ("from memory" in str(value.cited)) == (value.status == "from memory")


def test_the_table_holds_nothing_that_no_profile_reads() -> None:
    asked = {(name, rule) for name in PROFILE_NAMES for rule in NUMBERS}
    assert {(row["profile"], row["rule"]) for row in table("profiles")} == asked


@pytest.mark.parametrize("rule", [rule for rule in NUMBERS if rule != "fuse_need_ocpr_factor"])
def test_cautious_is_not_looser_than_either_iec_profile(rule: str) -> None:
    # Smaller is stricter for upper ends and limits, larger is stricter for factors on a demand; yes/no must agree.
    smaller_is_stricter = (
        "fuse_need_from_strings_count",
        "building_voltage_max_v",
        "ac_rise_limit_percent",
        "dwelling_voltage_max_v",
    )
    cautious = getattr(profile("cautious"), rule)
    for name in ("IEC 62548-1", "IEC 60364-7-712"):
        other = getattr(profile(name), rule)
        if (
            not other.is_set
            or other.text in ("yes", "no")
            or rule.endswith("_series")
            or rule == "fuse_need_isc_factor"
        ):
            continue
        if rule in smaller_is_stricter or rule.endswith("upper_factor") or rule.startswith("dc_drop"):
            assert cautious.value <= other.value
        else:
            assert cautious.value >= other.value


def test_the_cautious_need_test_is_the_stricter_one() -> None:
    ratios = {
        name: profile(name).fuse_need_isc_factor.value / profile(name).fuse_need_ocpr_factor.value
        for name in ("cautious", "IEC 62548-1", "IEC 60364-7-712")
    }
    assert ratios["cautious"] == max(ratios.values())


def test_a_limit_that_is_not_set_has_no_value() -> None:
    upper = profile("NEC 690").fuse_upper_factor
    assert not upper.is_set
    with pytest.raises(NoRow, match="sets no such limit"):
        _ = upper.value


def test_yes_or_no_is_not_a_number() -> None:
    assert not profile("IEC 62548-1").fuse_lower_included.holds
    assert profile("NEC 690").fuse_lower_included.holds
    with pytest.raises(ValueError, match="not a yes or no"):
        _ = profile("NEC 690").isc_factor.holds


def test_an_unknown_profile_lists_those_there_are() -> None:
    with pytest.raises(NoRow, match=r"no profile IEC 62548; there are cautious, IEC 62548-1"):
        profile("IEC 62548")
