"""The rule profiles: which standard's factor is used where the standards differ.

A profile is data (profiles.csv), chosen in the spec and printed on the sheet. A profile value keeps the clause it comes
from, so that every rating made with it can cite that clause.
"""

from __future__ import annotations

from dataclasses import fields
from functools import lru_cache

from sld.citation import Citation, cited, clause_from_memory
from sld.frozen import dataclass
from sld.tables.table import NoRow, Row, table
from sld.words import ENGLISH, Phrase, Sayable, phrase
from sld.words.cell import of_cell

__all__ = ["PROFILE_NAMES", "Profile", "ProfileValue", "profile"]

PROFILE_NAMES = ("cautious", "IEC 62548-1", "IEC 60364-7-712", "BS 7671", "AS/NZS 5033", "NEC 690")


@dataclass(frozen=True, slots=True)
class ProfileValue:
    """One value of a profile: its text as in the table, its unit, its clause and whether that was seen."""

    rule: str
    text: str
    unit: str
    clause: Sayable
    status: str
    reference: Citation

    @property
    def is_set(self) -> bool:
        """Return whether the profile sets such a limit at all."""
        return bool(self.text)

    @property
    def value(self) -> float:
        """Return the number, in `unit`. Raises NoRow where the profile sets no such limit."""
        if not self.text:
            raise NoRow(f"{ENGLISH.say(self.reference)}: the profile sets no such limit ({ENGLISH.say(self.clause)})")
        return float(self.text)

    @property
    def holds(self) -> bool:
        """Return a yes/no value. Raises ValueError for a number."""
        if self.text not in ("yes", "no"):
            raise ValueError(f"{ENGLISH.say(self.reference)} is not a yes or no but {self.text}")
        return self.text == "yes"

    @property
    def cited(self) -> Citation:
        """Return the clause as it is printed, with the remark that it is from memory where it is."""
        return clause_from_memory(self.clause) if self.status == "from memory" else cited(self.clause)


@dataclass(frozen=True, slots=True)
class Profile:
    """The values of one profile.

    isc_factor: KI, on Isc for the largest short-circuit current. uoc_default_factor: on Uoc at STC where nothing else
    is known. factor_table_needs_no_coefficient: the voltage factor table is open only where the maker gives no
    coefficient. fuse_need_*: a string fuse is needed when (Np - 1) x isc factor x Isc > ocpr factor x OCPR and Np is
    at least fuse_need_from_strings_count. fuse_lower/upper: limits of the string fuse as multiples of Isc at STC.
    array_fuse_*: the same for a sub-array or array. isolator_current_factor: on the Isc of the circuit.
    cable_current_factor: on Isc for the corrected capacity; cable_uncorrected_factor: for the capacity before
    corrections. building_voltage_max_v, dwelling_voltage_max_v: largest array voltage on a building and on a dwelling.
    dc_drop_*, ac_rise_limit_percent: voltage drop of the array cabling, voltage rise on the AC side;
    ac_rise_is_required: the standard demands it, it is no mere target. dc_fuse_series, dc_isolator_series: which series
    of standard ratings is chosen from. dc_isolator_has_category: DC isolators have a category of IEC 60947-3.
    ac_surge_is_required: surge protection at the origin without lightning protection too; ac_surge_by_risk: unless the
    calculated risk level is high enough, else unless the owner declines it.
    """

    name: str
    isc_factor: ProfileValue
    uoc_default_factor: ProfileValue
    factor_table_needs_no_coefficient: ProfileValue
    fuse_need_isc_factor: ProfileValue
    fuse_need_ocpr_factor: ProfileValue
    fuse_need_from_strings_count: ProfileValue
    fuse_lower_factor: ProfileValue
    fuse_lower_included: ProfileValue
    fuse_upper_factor: ProfileValue
    array_fuse_lower_factor: ProfileValue
    array_fuse_upper_factor: ProfileValue
    isolator_current_factor: ProfileValue
    cable_current_factor: ProfileValue
    cable_uncorrected_factor: ProfileValue
    building_voltage_max_v: ProfileValue
    dwelling_voltage_max_v: ProfileValue
    dc_drop_advice_percent: ProfileValue
    dc_drop_limit_percent: ProfileValue
    ac_rise_limit_percent: ProfileValue
    ac_rise_is_required: ProfileValue
    dc_fuse_series: ProfileValue
    dc_isolator_series: ProfileValue
    dc_isolator_has_category: ProfileValue
    ac_surge_is_required: ProfileValue
    ac_surge_by_risk: ProfileValue

    @property
    def said(self) -> Phrase:
        """Return the profile as the origin of a value."""
        return phrase("profile {name}", name=of_cell(self.name))


def _value(row: Row) -> ProfileValue:
    return ProfileValue(row["rule"], row["value"], row["unit"], row.said("clause"), row.status, row.reference)


@lru_cache(maxsize=16)
def profile(name: str) -> Profile:
    """Return a profile by its name, one of PROFILE_NAMES. Raises NoRow, listing the names, for any other."""
    if name not in PROFILE_NAMES:
        raise NoRow(f"there is no profile {name}; there are {', '.join(PROFILE_NAMES)}")
    rules = [field.name for field in fields(Profile) if field.name != "name"]
    values = {rule: _value(table("profiles").pick(profile=name, rule=rule)) for rule in rules}
    return Profile(name, **values)
