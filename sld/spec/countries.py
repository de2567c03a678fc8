"""Country codes of two letters, and the slips that are made with them."""

from __future__ import annotations

from sld.grid.read import GENERIC, known
from sld.spec.fault import fault

__all__ = ["CODES", "known_country", "listed"]

_ASSIGNED = """\
AD AE AF AG AI AL AM AO AQ AR AS AT AU AW AX AZ BA BB BD BE BF BG BH BI BJ BL BM BN BO BQ BR BS BT BV BW BY BZ CA CC
CD CF CG CH CI CK CL CM CN CO CR CU CV CW CX CY CZ DE DJ DK DM DO DZ EC EE EG EH ER ES ET FI FJ FK FM FO FR GA GB GD
GE GF GG GH GI GL GM GN GP GQ GR GS GT GU GW GY HK HM HN HR HT HU ID IE IL IM IN IO IQ IR IS IT JE JM JO JP KE KG KH
KI KM KN KP KR KW KY KZ LA LB LC LI LK LR LS LT LU LV LY MA MC MD ME MF MG MH MK ML MM MN MO MP MQ MR MS MT MU MV MW
MX MY MZ NA NC NE NF NG NI NL NO NP NR NU NZ OM PA PE PF PG PH PK PL PM PN PR PS PT PW PY QA RE RO RS RU RW SA SB SC
SD SE SG SH SI SJ SK SL SM SN SO SR SS ST SV SX SY SZ TC TD TF TG TH TJ TK TL TM TN TO TR TT TV TW TZ UA UG UM US UY
UZ VA VC VE VG VI VN VU WF WS YE YT ZA ZM ZW
"""
CODES = frozenset(_ASSIGNED.split())
"""The officially assigned codes of ISO 3166-1 alpha-2 (as of the file iso3166.tab of the IANA time zone database)."""

_MEANT = {"UK": "GB", "EN": "GB", "EL": "GR", "SW": "SE", "JA": "JP", "SP": "ES"}
"""Codes of other lists, such as of languages and of the European Union, and the country that is meant by them."""


def known_country(code: str) -> str:
    """Return a code that is on the list. Raises PydanticCustomError for another."""
    if code not in CODES:
        remedy = (
            f"write {_MEANT[code]}"
            if code in _MEANT
            else f"write the code of two letters of ISO 3166-1; {listed()}, elsewhere `grid_rules: {GENERIC}`"
        )
        raise fault(f"there is no country `{code}` in ISO 3166-1", remedy)
    return code


def listed() -> str:
    """Return which grid rules there are, for a message."""
    return f"there are grid rules for {', '.join(known())}"
