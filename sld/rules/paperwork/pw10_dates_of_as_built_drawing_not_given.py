"""Dates of as-built drawing not given.

What it checks
    Whether an as-built drawing has the dates of installation and commissioning.

Why
    The documentation of a finished system states both; before it is finished they may be left open.

How
    `document_status` holds the words as built.

Remedy
    Give the keys that the message names.

Clause
    IEC 62446-1:2016 4.2.1 (from memory).

Not covered
    Whether the drawing is as the system was built.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.rules.paperwork.issued import handed_in
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("PW10", "dates of as-built drawing not given", Severity.ADVICE, "IEC 62446-1:2016 4.2.1 (from memory)")
def dates_of_as_built_drawing_not_given(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    project = system.project
    if "as built" not in (project.document_status or "").casefold().replace("-", " "):
        return
    given = {"installed": project.installed, "commissioned": project.commissioned}
    lacking = [key for key, value in given.items() if not value]
    if lacking and handed_in(system):
        keys = ", ".join(f"`{key}`" for key in lacking)
        yield Breach(
            phrase("the drawing is as built, and its dates are not given: {keys}", keys=keys),
            phrase("give {keys} under `project`", keys=keys),
            ("project", lacking[0]),
        )
