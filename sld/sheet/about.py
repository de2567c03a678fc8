"""What a file says about itself to those who search for it: author, keywords, date."""

from __future__ import annotations

from sld.model.system import System
from sld.sheet.sheet import About
from sld.spec.blocks.project import Project

__all__ = ["about", "date_of_issue"]


def date_of_issue(project: Project) -> str:
    """Return the date of issue as given, else the newest revision's, else nothing."""
    return project.date or (project.revisions[-1].date if project.revisions else "")


def about(system: System) -> About:
    """Return author (the designer's company, else the drawing's owner), keywords and date (of issue, else the newest
    revision's) of the drawing of a system; what the spec does not give is empty."""
    project, supply = system.project, system.supply
    company = project.designer.company if project.designer else ""
    words = (
        "single-line diagram", "photovoltaic system", project.drawing_number, project.reference, project.customer,
        project.address, supply.supply_point, supply.operator, project.document_status,
    )  # fmt: skip
    keywords = tuple(dict.fromkeys(word for word in words if word))
    return About(company or project.owner or "", keywords, date_of_issue(project))
