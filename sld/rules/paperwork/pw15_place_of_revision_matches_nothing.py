"""Place of a revision matches nothing.

What it checks
    Whether each place that a revision says to have changed is on the drawing.

Why
    The triangle of the revision stands where something changed, so that whoever approved the drawing before looks
    there. A place that is mistaken, or that a later change took away, leaves the mark out, and nobody looks.

How
    Each entry of `places` of a revision is the path of a device or of a block around one, or a printed designation.

Remedy
    Correct the entry, or remove it.

Clause
    Common practice, no source.

Not covered
    Whether something changed there, and what changed elsewhere.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.revised import revised_at
from sld.model.system import System
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("PW15", "place of a revision matches nothing", Severity.ADVICE, "common practice, no source", once=True)
def place_of_revision_matches_nothing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.others and system is not min((system, *system.others), key=lambda each: each.point.prefix):
        return  # told once, by the first of several supply points
    for number, revision in enumerate(system.project.revisions):
        for place, said in enumerate(revision.places):
            if not any(revised_at(each, said) for each in (system, *system.others)):
                yield Breach(
                    phrase(
                        "revision {index} changed {place}, which is not on the drawing",
                        index=revision.index,
                        place=said,
                    ),
                    phrase("correct the entry, or remove it"),
                    ("project", "revisions", number, "places", place),
                )
