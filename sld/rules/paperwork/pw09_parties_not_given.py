"""Parties not given.

What it checks
    Whether customer, designer and installer are given.

Why
    The documentation names the customer, who designed and who installs, so that the reviewer can ask.

How
    A drawing that says what it is handed in for (`document_status`) or that the operator reads.

Remedy
    Give the keys that the message names.

Clause
    IEC 62446-1:2016 4.2.1 to 4.2.3 (from memory).

Not covered
    Licences and authorisations.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.rules.paperwork.issued import handed_in
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("PW09", "parties not given", Severity.ADVICE, "IEC 62446-1:2016 4.2.1 to 4.2.3 (from memory)")
def parties_not_given(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if not handed_in(system):
        return
    project = system.project
    given = {"customer": project.customer, "designer": project.designer, "installer": project.installer}
    lacking = [key for key, value in given.items() if not value]
    if lacking:
        keys = ", ".join(f"`{key}`" for key in lacking)
        yield Breach(
            phrase(
                "the drawing is to be handed in, and those with a part in the work are not given: {keys}", keys=keys
            ),
            phrase("give {keys} under `project`", keys=keys),
            ("project", lacking[0]),
        )
