"""What the rule profile leaves open.

What it checks
    Nothing: it says what the chosen rule profile does not answer, or answers by another standard.

Why
    A drawing without a finding looks as if everything had been looked at.

How
    One remark for each line that the table of scopes has for the profile.

Remedy
    A check by other means, by a person who knows the code.

Clause
    None: the list is of what this project does not compute.

Not covered
    What no profile looks at.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.steps.ledger import Ratings
from sld.tables.table import table
from sld.words import phrase


@rule("PR01", "what the rule profile leaves open", Severity.ASSUMPTION, "no source: what this project does not compute")
def profile_leaves_open(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for row in table("profile_scope").where(profile=system.profile):
        yield Breach(
            phrase("profile {profile}: {what}", profile=system.profile, what=row.said("text")),
            phrase("check it by other means"),
            ("profile",),
        )
