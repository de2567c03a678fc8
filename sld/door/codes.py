"""The codes that a finding can have, by family, for who asks what one means."""

from __future__ import annotations

from sld.finding import RULES, Rule

__all__ = ["FAMILIES", "family_of", "registered"]

FAMILIES = {
    "AC": "AC side",
    "ACC": "Accepted deviations",
    "AS": "Assumptions",
    "BA": "Battery",
    "BU": "Backup and change-over",
    "DB": "Data bus",
    "DC": "DC side",
    "EA": "Earthing and bonding",
    "FA": "Faults and disconnection",
    "ME": "Metering",
    "PW": "Paperwork",
    "NE": "National Electrical Code",
    "PR": "Rule profile",
    "RT": "Ratings without an answer",
    "SP": "Spec that cannot be used",
    "SU": "Surge protection",
}
"""Titles of the families; one that is not listed is headed by its letters."""


def registered() -> list[Rule]:
    """Return every code there is, in alphabetical order."""
    import sld.model.assumed
    import sld.rules
    import sld.spec.references
    import sld.spec.source  # noqa: F401 - filling the registry is what these imports are for

    return [RULES[code] for code in sorted(RULES)]


def family_of(rule: Rule) -> str:
    """Return the letters of the family that a code belongs to."""
    return rule.code.rstrip("0123456789")
