"""Everything that belongs on the sheets of one system, in the order it is printed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from sld import layout
from sld.finding import Finding
from sld.layout.diagram.diagram import Diagram
from sld.layout.diagram.flags import Flag, numbered
from sld.model.system import System
from sld.sheet.about import date_of_issue
from sld.sheet.compose import Composition, Drawn, Part, Unseen, compose
from sld.sheet.content.findings import accepted_block, assumptions_block, count_in_words, findings_block
from sld.sheet.content.hover import description, hover_texts
from sld.sheet.content.notes import basis, notes
from sld.sheet.content.reader import DOCUMENT_TYPES, read_by
from sld.sheet.content.review import review
from sld.sheet.content.schedules import schedules
from sld.sheet.content.sheet_index import sheet_index
from sld.sheet.content.summary import summary
from sld.sheet.legend import legend
from sld.sheet.listings.laid import Listing
from sld.sheet.placement import best_plan, fits, is_short, largest_of, paper_of, room_mm
from sld.sheet.title_block import Revision, TitleBlock
from sld.steps import Ratings
from sld.symbols import catalogue

__all__ = ["sheets", "title_block"]


def sheets(
    diagram: Diagram,
    system: System,
    ratings: Ratings,
    findings: Sequence[Finding],
    flags: Sequence[Flag],
    paper: str,
) -> Composition:
    """Return the sheets of a system: the diagram with what fits beside it, then what does not.

    A diagram that needs a larger sheet than may be taken is drawn on several, with an overview before them.
    """
    titles = title_block(system, findings)
    drawn = _drawn(diagram, system, titles, paper)
    symbols = catalogue.family(diagram.symbols)
    listings: list[Listing | None] = [
        notes(system),
        findings_block(system, flags),
        sheet_index(system, [(part.plan, part.title) for part in drawn.parts]) if drawn.parts else None,
        review(system, ratings),
        summary(system, ratings),
        legend(drawn.plans, symbols, symbols.standard),
        basis(system, drawn.note),
        accepted_block(system, flags),
        assumptions_block(system, ratings),
        *schedules(system, ratings),
    ]
    texts: dict[str, str] = {}
    for plan in drawn.plans:
        texts |= hover_texts(system, ratings, flags, plan)
    made = compose(
        drawn,
        symbols,
        titles,
        read_by(system.drawing.reader, listings),
        paper,
        Unseen(texts, description(system, ratings)),
    )
    return replace(made, note=drawn.note if drawn.parts else made.note)


def _drawn(diagram: Diagram, system: System, titles: TitleBlock, paper: str) -> Drawn:
    """Return the diagram on one sheet where it fits one that may be taken, else in parts."""
    largest = largest_of(system.drawing.largest_paper, paper)
    plan = best_plan(layout.plans_of(diagram), titles, paper, largest)
    taken, note = paper_of(plan, titles, paper)
    if taken.width_mm * taken.height_mm <= largest.width_mm * largest.height_mm:
        return Drawn(plan, (), {}, note if taken.name != paper else "")
    made = layout.parts_of(diagram, lambda part: fits(part, titles, paper), layout.Room(*room_mm(paper)))
    parts = tuple(Part(part, system.language.say(title)) for part, title in zip(made.plans, made.titles, strict=True))
    note = (
        f"the diagram of {plan.width_mm:.0f} × {plan.height_mm:.0f} mm does not fit {largest.name}, so it is drawn on "
        f"sheets 2 to {len(parts) + 1}; at the end of a line that goes on elsewhere, /3.B4 is sheet 3, zone B4"
    )
    first, references = layout.overview_of(diagram, system, made, lambda each: is_short(each, titles, paper))
    return Drawn(first, parts, {**made.references, **references}, note)


def title_block(system: System, findings: Sequence[Finding]) -> TitleBlock:
    """Return the fields of the title block."""
    project = system.project
    revisions = tuple(
        Revision(each.index, each.change, each.date, each.drawn or "", each.checked or "") for each in project.revisions
    )
    newest = project.revisions[-1] if project.revisions else None
    return TitleBlock(
        legal_owner=project.owner or (project.designer.company if project.designer else ""),
        title=project.title,
        document_type=DOCUMENT_TYPES[system.drawing.reader],
        identification_number=project.drawing_number or project.reference or "",
        date_of_issue=date_of_issue(project),
        creator=project.drawn_by or "",
        supplementary_title=project.subtitle or "",
        revision_index=newest.index if newest else "",
        approval_person=project.approved_by or "",
        status=project.document_status or "",
        language=project.language,
        site=project.address or "",
        customer=project.customer or "",
        rule_profile=system.profile,
        findings=count_in_words([flag.findings[0] for flag in numbered(system, findings)]),
        revisions=revisions,
        logo=project.logo is not None,
        stamp_box=system.drawing.stamp_box,
    )
