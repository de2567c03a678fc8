"""The page of findings: every code that a check can give, by family."""

from __future__ import annotations

from itertools import groupby

from sld.door.codes import FAMILIES, family_of, registered
from sld.finding import Rule
from sld.gallery.markdown import GENERATED, plain, table_lines
from sld.spec.quote import severity_word

__all__ = ["rules"]

_TOP = """# Findings

Every finding has a code. `sld explain CODE` prints the text below on the terminal. The severity is the worst that the
code can have:

- error: the spec cannot be used, and nothing is drawn;
- danger: people or equipment can be harmed;
- non-compliance: a requirement of the standard or data sheet named is not met;
- advice: better otherwise;
- assumption: the spec does not say it, so it was assumed.

No finding does not mean that a design is right: only what has a code is looked at, with the values in the spec. The
clauses are named as far as public sources let them be; the edition that applies at the site decides; local rules
take precedence.
"""


def _explained(rule: Rule) -> list[str]:
    """Return an explanation as paragraphs; a line with an indented part below it becomes that part's heading."""
    first, *rest = rule.explanation.splitlines() or [""]
    repeated = first.rstrip(".").casefold() == str(rule.title).casefold()
    lines = "\n".join(rest if repeated else [first, *rest]).strip("\n").splitlines()
    found = []
    for line, below in zip(lines, [*lines[1:], ""], strict=True):
        is_heading = line.strip() and not line.startswith(" ") and below.startswith(" ")
        found.append(f"**{plain(line.strip())}.**" if is_heading else plain(line.strip()))
    return [*found, ""]


def _section(rule: Rule) -> list[str]:
    lines = [f"### {rule.code}", "", f"**{plain(str(rule.title))}** ({severity_word(rule)})", "", *_explained(rule)]
    if rule.clause and "\nClause\n" not in rule.explanation:
        lines += [f"Source: {plain(str(rule.clause))}", ""]
    return lines


def rules() -> str:
    """Return the page."""
    lines = [GENERATED, "", _TOP]
    for family, members in groupby(registered(), family_of):
        found = list(members)
        lines += [f"## {FAMILIES.get(family, family)}", ""]
        lines += table_lines(
            ("Code", "Title", "Severity"),
            ([f"[{each.code}](#{each.code.lower()})", plain(str(each.title)), severity_word(each)] for each in found),
        )
        for each in found:
            lines += _section(each)
    return "\n".join(lines)
