"""Title block incomplete.

What it checks
    Whether the mandatory fields of the title block are given: owner, number, date, creator.

Why
    A drawing that cannot be named, dated and asked about is sent back. The field of the approval person is left
    empty for a signature by hand.

How
    A drawing that says what it is handed in for (`document_status`) or that the operator reads.

Remedy
    Give the keys that the message names.

Clause
    ISO 7200:2004 mandatory data fields (from summaries).

Not covered
    The approval person; the title, which every spec has.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.rules.paperwork.issued import handed_in
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("PW04", "title block incomplete", Severity.ADVICE, "ISO 7200:2004 mandatory data fields (from summaries)")
def title_block_incomplete(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if not handed_in(system):
        return
    project = system.project
    owner = project.owner or (project.designer.company if project.designer else None)
    given = {
        "owner": owner,
        "drawing_number": project.drawing_number or project.reference,
        "date": project.date or project.revisions,
        "drawn_by": project.drawn_by,
    }
    lacking = [key for key, value in given.items() if not value]
    if lacking:
        keys = ", ".join(f"`{key}`" for key in lacking)
        yield Breach(
            phrase("the drawing is to be handed in, and fields of its title block are empty: {keys}", keys=keys),
            phrase("give {keys} under `project`", keys=keys),
            ("project", lacking[0]),
        )
