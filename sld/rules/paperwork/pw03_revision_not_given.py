"""Revision not given.

What it checks
    Whether the drawing has a revision.

Why
    What was approved must be told from what was changed later. A change of equipment after the approval needs a revised
    drawing, which only its revision tells from the first one.

How
    A drawing that says what it is handed in for (`document_status`) or that the operator reads.

Remedy
    Add an entry with `index`, `change` and `date` to `revisions` under `project`.

Clause
    ISO 7200:2004 (from memory).

Not covered
    Whether it is right.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.rules.paperwork.issued import handed_in
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("PW03", "revision not given", Severity.ADVICE, "ISO 7200:2004 (from memory)")
def revision_not_given(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if handed_in(system) and not system.project.revisions:
        yield Breach(
            phrase("the drawing is to be handed in, and it has no revision"),
            phrase("add an entry with `index`, `change` and `date` to `revisions` under `project`"),
            ("project", "revisions"),
        )
