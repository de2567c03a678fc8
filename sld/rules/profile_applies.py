"""Which rules are asked under a rule profile.

The figures of IEC 60364, IEC 61643 and of the product standards of IEC devices do not hold under the National
Electrical Code; the rules of the family NE take their place, or the sheet says that nothing is computed (the table
profile_scope).
"""

from __future__ import annotations

from sld.finding import SpecPath
from sld.model.system import System
from sld.words import Phrase, phrase

__all__ = ["applies", "asking"]

_INSTEAD = {
    "AC01": "NE01", "AC02": "NE02", "AC03": "NE03", "AC04": "NE01", "AC19": "NE04", "DC22": "NE02",
    "AC40": "", "AC41": "", "AC42": "", "FA14": "", "SU25": "",
    "AC37": "", "AC38": "", "AC39": "", "DC35": "", "DC37": "", "DC43": "", "DC44": "", "DC49": "",
    "EA09": "", "EA10": "", "EA11": "", "FA10": "", "FA11": "NE10", "FA12": "", "FA13": "", "FA15": "",
    "SU17": "", "SU18": "", "SU19": "",
    "AC06": "", "AC07": "", "AC08": "", "AC09": "", "AC18": "", "AC26": "", "AC30": "", "AC31": "", "AC32": "",
    "AC46": "", "AC53": "",
    "DC20": "", "DC21": "", "DC25": "", "EA04": "", "EA06": "", "EA07": "", "EA08": "", "EA15": "",
    "FA03": "", "FA04": "", "FA05": "", "FA06": "", "FA07": "", "FA08": "", "FA09": "",
    "SU01": "", "SU02": "", "SU03": "", "SU05": "", "SU06": "", "SU07": "", "SU08": "NE07", "SU10": "",
    "BA03": "", "BA08": "NE02", "BU03": "", "BU04": "", "BU07": "", "BU09": "",
    "SU11": "", "SU12": "", "SU13": "", "SU14": "", "SU15": "", "SU16": "",
}  # fmt: skip
"""Rules with IEC figures -> the rule that answers the same question under the code; none where nothing does."""


def asking(system: System) -> tuple[SpecPath, Phrase]:
    """Return where the spec says what decides the demands on the DC side beside the standards: profile or country."""
    if system.follows_nec:
        return ("profile",), phrase("rule profile")
    return ("supply", "country"), phrase("country of the installation")


def applies(code: str, system: System) -> bool:
    """Return whether a rule is asked in a system."""
    if system.follows_nec:
        return code not in _INSTEAD
    return not code.startswith("NE")
