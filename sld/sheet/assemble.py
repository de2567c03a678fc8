"""Everything that belongs on the sheets of one system, in the order it is printed."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from sld.finding import Finding
from sld.layout.flags import Flag
from sld.layout.plan import Plan
from sld.model.system import System
from sld.rate import Ratings
from sld.sheet.about import about
from sld.sheet.blocks.laid import Block
from sld.sheet.compose import Composition, best_plan, compose, paper_of
from sld.sheet.content.findings import accepted_block, assumptions_block, count_in_words, findings_block
from sld.sheet.content.hover import description, hover_texts
from sld.sheet.content.notes import basis, notes
from sld.sheet.content.schedules import schedules
from sld.sheet.content.summary import summary
from sld.sheet.legend import legend
from sld.sheet.title_block import Revision, TitleBlock
from sld.symbols import catalogue

__all__ = ["sheets", "title_block"]


def sheets(
    plans: Iterable[Plan],
    system: System,
    ratings: Ratings,
    findings: Sequence[Finding],
    flags: Sequence[Flag],
    paper: str,
) -> Composition:
    """Return the sheets of a system: the diagram with what fits beside it, then what does not.

    plans: the same diagram in several proportions, the preferred one first; the smallest paper decides.
    """
    titles = title_block(system, findings)
    plan = best_plan(plans, titles, paper)
    symbols = catalogue.family(plan.symbols)
    taken, note = paper_of(plan, titles, paper)
    blocks: list[Block | None] = [
        notes(),
        findings_block(system, flags),
        summary(system, ratings),
        legend(plan, symbols, symbols.standard),
        basis(system, note if taken != paper else ""),
        accepted_block(system, flags),
        assumptions_block(system, ratings),
        *schedules(system, ratings),
    ]
    composed = compose(
        plan,
        symbols,
        titles,
        [block for block in blocks if block is not None],
        hover_texts(system, ratings, flags, plan),
        paper,
        description(system, ratings),
    )
    drawn = tuple(replace(each, colour=system.drawing.colour) for each in composed.sheets)
    return replace(composed, sheets=drawn, about=about(system))


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
        identification_number=project.drawing_number or project.reference or "",
        date_of_issue=project.date or (newest.date if newest else ""),
        creator=project.drawn_by or "",
        supplementary_title=project.subtitle or "",
        revision_index=newest.index if newest else "",
        approval_person=project.approved_by or "",
        status=project.document_status or "",
        language=project.language,
        site=project.address or "",
        customer=project.customer or "",
        rule_profile=system.profile,
        findings=count_in_words(findings),
        revisions=revisions,
    )
