"""What the title block of the drawing says, and what its files say of themselves."""

from __future__ import annotations

from collections.abc import Sequence

from sld.finding import Finding, tally
from sld.frozen import dataclass
from sld.model.system import System
from sld.model.wording import profile_word
from sld.readers import READERS
from sld.spec.blocks.project import Project
from sld.words import ENGLISH, NOTHING, Day, Language, Phrase, Sayable, phrase, sequence, verbatim

__all__ = ["Metadata", "Revision", "TitleBlock", "metadata", "title"]


@dataclass(frozen=True, slots=True)
class Revision:
    """One row of the revision table: index letter, what changed, date of issue, who drew, who checked."""

    index: str
    change: str
    date: Sayable
    drawn: str = ""
    checked: str = ""


@dataclass(frozen=True, slots=True)
class TitleBlock:
    """The fields of a title block after ISO 7200:2004. Empty ones keep their captions, to be filled in by hand.

    findings: the count of findings. revisions: oldest first. logo: whether a field is kept for it. stamp_box: whether a
    box is kept for a reviewer's stamp and remarks.
    """

    legal_owner: str
    title: str
    identification_number: str
    date_of_issue: Sayable
    creator: str
    document_type: Sayable = NOTHING
    supplementary_title: str = ""
    revision_index: str = ""
    approval_person: str = ""
    status: str = ""
    language: Language = ENGLISH
    site: str = ""
    customer: str = ""
    rule_profile: Sayable = NOTHING
    findings: Sayable = NOTHING
    revisions: tuple[Revision, ...] = ()
    logo: bool = False
    stamp_box: bool = False


@dataclass(frozen=True, slots=True)
class Metadata:
    """What a file says about itself to those who search for it. date: YYYY-MM-DD, or empty."""

    author: str
    keywords: tuple[Sayable | str, ...]
    date: str


def title(
    system: System, findings: Sequence[Finding], document_type: Phrase | None = None, part: int | None = None
) -> TitleBlock:
    """Return the fields of the title block. document_type: what the document is called, else as the drawing is.

    part: stands behind the number of the drawing, where there is one, so that each document has a number of its own.
    """
    project = system.project
    newest = project.revisions[-1] if project.revisions else None
    return TitleBlock(
        legal_owner=project.owner or (project.designer.company if project.designer else ""),
        title=project.title,
        document_type=document_type or READERS[system.drawing.reader].title,
        identification_number=_number(project, part),
        date_of_issue=Day(_date_of_issue(project)),
        creator=project.drawn_by or "",
        supplementary_title=project.subtitle or "",
        revision_index=newest.index if newest else "",
        approval_person=project.approved_by or "",
        status=project.document_status or "",
        language=system.language,
        site=project.address or "",
        customer=project.customer or "",
        rule_profile=sequence([profile_word(system.profile), *_grid_rules(system)], "; "),
        findings=tally(findings).phrase,
        revisions=tuple(
            Revision(each.index, each.change, Day(each.date), each.drawn or "", each.checked or "")
            for each in project.revisions
        ),
        logo=project.logo is not None,
        stamp_box=system.drawing.stamp_box,
    )


def _grid_rules(system: System) -> list[Sayable]:
    """Return the grid rules with their edition, where the country is given."""
    rules = system.grid_rules
    if not system.supply.country:
        return []
    return [verbatim(f"{rules.code}: {rules.book}"), *map(verbatim, rules.replaced_by())]


def metadata(system: System) -> Metadata:
    """Return author (the designer's company, else the drawing's owner), keywords and date of the drawing of a system.

    The date is that of issue, else the newest revision's; what the spec does not give is empty.
    """
    project, supply = system.project, system.supply
    company = project.designer.company if project.designer else ""
    given = (
        project.drawing_number, project.reference, project.customer, project.address, supply.supply_point,
        supply.operator, project.document_status,
    )  # fmt: skip
    words: tuple[Sayable | str, ...] = (
        phrase("single-line diagram"),
        phrase("photovoltaic system"),
        *(word for word in given if word),
    )
    return Metadata(company or project.owner or "", tuple(dict.fromkeys(words)), _date_of_issue(project))


def _number(project: Project, part: int | None) -> str:
    """Return the number of the drawing, or of a document that belongs to it: `MV-01`, `MV-01.3`."""
    number = project.drawing_number or project.reference or ""
    return f"{number}.{part}" if number and part is not None else number


def _date_of_issue(project: Project) -> str:
    """Return the date of issue as given, else the newest revision's, else nothing."""
    return project.date or (project.revisions[-1].date if project.revisions else "")
