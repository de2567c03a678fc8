"""What is to be done and when: dates where the spec gives the day that they count from, else a line to write one on."""

from __future__ import annotations

from datetime import date, timedelta

from sld.documents.cell import FILL_IN, Cell, State, computed
from sld.documents.procedure.decision import procedure_of
from sld.documents.procedure.laid_down import laid_down, outcome
from sld.documents.section import Column, Table
from sld.grid.asked import Paper
from sld.grid.decide import met
from sld.grid.entry import AskedPaper, Limit
from sld.grid.outcome import Outcome, Timing, timing
from sld.model.device import BatteryUnit
from sld.model.system import System
from sld.spec.blocks.notification import Notification
from sld.steps import Ratings
from sld.steps.notified import facts
from sld.words import Day, Sayable, phrase, verbatim

__all__ = ["papers", "tasks"]

_COLUMNS = (
    Column(phrase("When")),
    Column(phrase("Date")),
    Column(phrase("What to do"), 2.0),
    Column(phrase("Clause, edition"), 1.0),
    Column(phrase("Standing"), 0.8),
)
_PAPER_COLUMNS = (
    Column(phrase("Document"), 1.6),
    Column(phrase("Form")),
    Column(phrase("When")),
    Column(phrase("Clause, edition"), 1.0),
    Column(phrase("Standing"), 0.8),
)
_ORDER = (Timing.DESIGN, Timing.BEFORE_WORK, Timing.BEFORE_COMMISSIONING, Timing.AFTER_COMMISSIONING)


def tasks(system: System, ratings: Ratings) -> Table:
    """Return what the procedure and the duties that hold ask for, in the order of time."""
    known = facts(system, ratings)
    asked = [procedure_of(system, ratings), *(each for each in system.grid_rules.duties if met(each, known))]
    ordered = sorted(asked, key=lambda each: _ORDER.index(timing(each.outcome)))  # as in the file where the time is one
    rows = [_row(each, system) for each in ordered if each.outcome is not Outcome.NONE]
    return Table("grid_tasks", phrase("What to do, and when"), _COLUMNS, tuple(rows))


def _row(limit: Limit, system: System) -> tuple[Cell, ...]:
    when = timing(limit.outcome)
    return (
        laid_down(limit, when.said(limit.days)),
        _date(when, limit.days, system),
        laid_down(limit, outcome(limit)),
        laid_down(limit, limit.cited),
        laid_down(limit, limit.standing.phrase),
    )


def _date(when: Timing, days: int | None, system: System) -> Cell:
    """Return the last day, counted from the day that the spec gives; a line to write on where it gives none."""
    if when is Timing.DESIGN:
        return Cell(phrase("no date"), State.NOT_APPLICABLE, why=phrase("with the design"))
    project, planned = system.project, system.notification or Notification()
    begins, ends = planned.work_begins or project.installed, project.commissioned or planned.commissioning_planned
    start = begins if when is Timing.BEFORE_WORK else ends
    if start is None or (days is None and when is Timing.AFTER_COMMISSIONING):
        return FILL_IN
    apart = timedelta(days=days or 0) if when is Timing.AFTER_COMMISSIONING else -timedelta(days=days or 0)
    return computed(Day((date.fromisoformat(start) + apart).isoformat()))


def papers(system: System, ratings: Ratings) -> Table:
    """Return the documents that the country asks for, as far as their conditions hold."""
    known = facts(system, ratings)
    stored = any(system.of(BatteryUnit))
    asked = [
        each
        for each in system.grid_rules.papers
        if met(each, known) and (stored or each.paper is not Paper.STORAGE_DATA)
    ]
    ordered = sorted(asked, key=lambda each: not each.before)
    return Table("grid_papers", phrase("Documents asked for"), _PAPER_COLUMNS, tuple(map(_paper, ordered)))


def _paper(asked: AskedPaper) -> tuple[Cell, ...]:
    when = Timing.BEFORE_WORK if asked.before else Timing.AFTER_COMMISSIONING
    form: Sayable = verbatim(asked.form) if asked.form else phrase("no form named")
    return (
        laid_down(asked, asked.paper.phrase),
        laid_down(asked, form),
        laid_down(asked, when.said(None)),
        laid_down(asked, asked.cited),
        laid_down(asked, asked.standing.phrase),
    )
