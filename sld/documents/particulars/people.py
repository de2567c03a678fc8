"""Who has a part in the work, and the application to the network operator."""

from __future__ import annotations

from sld.documents.cell import Cell, answer, computed, given
from sld.documents.section import Column, Form, Table
from sld.model.system import System
from sld.spec.blocks.notification import Notification
from sld.spec.blocks.project import Party
from sld.words import NOTHING, Day, Phrase, Sayable, phrase, sequence, verbatim

__all__ = ["application", "parties", "project_form"]

_KINDS = {
    "new": phrase("new installation"),
    "extension": phrase("extension of an existing installation"),
    "replacement": phrase("replacement of an existing installation"),
}


def _day(text: str | None) -> Sayable | None:
    return Day(text) if text else None


def project_form(system: System) -> Form:
    """Return what the installation is and where it stands."""
    project = system.project
    fields: list[tuple[Sayable, Cell]] = [
        (phrase("Installation"), answer("installation", project.title)),
        (phrase("Address of the site"), answer("address", project.address)),
        (phrase("Customer"), answer("customer", project.customer)),
        (phrase("Project reference"), given(project.reference or NOTHING)),
        (phrase("Date of installation"), answer("installed", _day(project.installed))),
        (phrase("Date of commissioning"), answer("commissioned", _day(project.commissioned))),
    ]
    return Form("project", phrase("Installation"), tuple(fields))


def application(system: System) -> Form:
    """Return the application: its kind, whose account and land, and when."""
    said = system.notification or Notification()
    fields: list[tuple[Sayable, Cell]] = [
        (phrase("Kind of application"), answer("application", _KINDS[said.application] if said.application else None)),
        (phrase("Account holder, as on the bill"), answer("account_holder", said.account_holder)),
        (phrase("Account number"), answer("account_number", said.account_number)),
        (phrase("Parcel of land"), answer("parcel_number", said.parcel_number)),
        (phrase("Work is to begin"), answer("work_begins", _day(said.work_begins))),
        (phrase("Commissioning is planned for"), answer("commissioning_planned", _day(said.commissioning_planned))),
    ]
    return Form("application", phrase("Application"), tuple(fields))


_COLUMNS = (
    Column(phrase("Part in the work")),
    Column(phrase("Firm"), 1.0),
    Column(phrase("To ask for"), below=True),
    Column(phrase("Licence"), below=True),
    Column(phrase("Address"), 1.0),
    Column(phrase("Telephone"), below=True),
    Column(phrase("E-mail"), below=True),
)


def parties(system: System) -> Table:
    """Return who applies, designs and installs, blank where nobody is named, and all others with a part in it."""
    project, said = system.project, system.notification
    named: list[tuple[Phrase, str, Party | None]] = [
        (phrase("applicant"), "applicant", said.applicant if said else None),
        (phrase("designer"), "designer", project.designer),
        (phrase("installer"), "installer", project.installer),
    ]
    rows = [_party(part, key, party) for part, key, party in named]
    rows += [_party(verbatim(""), "party", party) for party in project.parties]
    return Table("parties", phrase("Parties"), _COLUMNS, tuple(rows))


def _party(part: Sayable, key: str, party: Party | None) -> tuple[Cell, ...]:
    """Return the row of a party. part: why it is in the table; its own role stands behind that."""
    role = party.role if party else None
    parts = [each for each in (part, verbatim(role or "")) if each != NOTHING]
    return (
        computed(sequence(parts)) if parts else given(NOTHING),
        answer(key, party.company if party else None),
        answer(f"{key}.contact", party.contact if party else None),
        answer(f"{key}.licence", party.licence if party else None),
        answer(f"{key}.address", party.address if party else None),
        answer(f"{key}.phone", party.phone if party else None),
        answer(f"{key}.email", party.email if party else None),
    )
