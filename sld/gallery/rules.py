"""The page of findings: every code that a check can give, by family."""

from __future__ import annotations

from itertools import groupby

from sld.finding import RULES, Rule
from sld.gallery.markdown import GENERATED, plain, table_lines

__all__ = ["registered", "rules"]

_TOP = """# Findings

Every finding has a code. `sld explain CODE` prints the text below on the terminal. The severity is the worst that the
code can have:

- error: the spec cannot be used, and nothing is drawn;
- danger: people or equipment can be harmed;
- non-compliance: a requirement of the standard or data sheet named is not met;
- advice: better otherwise;
- assumption: the spec does not say it, so it was assumed.

No finding does not mean that a design is right: only what has a code is looked at, with the values in the spec. The
clauses are named as far as public sources let them be; the edition that applies at the site decides, and local rules
go before it.
"""

FAMILIES = {
    "AC": "AC side",
    "ACC": "Accepted deviations",
    "AS": "Assumptions",
    "BUS": "Data bus",
    "DC": "DC side",
    "EA": "Earthing and bonding",
    "FLT": "Faults and protection",
    "MET": "Metering",
    "SP": "Spec that cannot be used",
    "SPD": "Surge protection",
}
"""Titles of the families; one that is not listed is headed by its letters."""


def registered() -> list[Rule]:
    """Return every code there is, in alphabetical order."""
    import sld.model.assumed
    import sld.rules
    import sld.spec.references
    import sld.spec.source  # noqa: F401 - filling the registry is what these imports are for

    return [RULES[code] for code in sorted(RULES)]


def _family(rule: Rule) -> str:
    return rule.code.rstrip("0123456789")


def _word(rule: Rule) -> str:
    return "error" if _family(rule) == "SP" else rule.severity.word


def _explained(text: str) -> list[str]:
    """Return an explanation as it was written: indented parts stay as they are, the rest is running text."""
    lines = []
    for line in text.splitlines():
        indented = line.startswith("    ")
        lines.append(line if indented else plain(line.rstrip()))
    return [*lines, ""]


def rules() -> str:
    """Return the page."""
    lines = [GENERATED, "", _TOP]
    for family, members in groupby(registered(), _family):
        found = list(members)
        lines += [f"## {FAMILIES.get(family, family)}", ""]
        lines += table_lines(
            ("Code", "Title", "Severity"),
            ([f"[{each.code}](#{each.code.lower()})", plain(each.title), _word(each)] for each in found),
        )
        for each in found:
            lines += [f"### {each.code}", "", f"**{plain(each.title)}** ({_word(each)})", ""]
            lines += _explained(each.explanation)
            if each.clause:
                lines += [f"Source: {plain(each.clause)}", ""]
    return "\n".join(lines)
