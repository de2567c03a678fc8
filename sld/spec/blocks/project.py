"""Project data, revisions and drawing options: what the title block prints."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import AfterValidator, Field, StringConstraints

from sld.spec.blocks.block import Block, Text
from sld.spec.blocks.dates import Date
from sld.spec.fault import fault
from sld.words import known_languages

__all__ = ["Drawing", "Party", "Project", "Revision"]


def _known_language(code: str) -> str:
    if code not in known_languages():
        raise fault(f"there is no language `{code}` here", f"write one of {', '.join(known_languages())}")
    return code


class Party(Block):
    """A firm with a part in the work."""

    company: Text = Field(description="Name of the firm.")
    role: Text | None = Field(
        default=None, description="Its part in the work, for example inspection; printed with its name."
    )
    licence: Text | None = Field(
        default=None, description="Number of the licence, registration or accreditation that its work asks for."
    )
    contact: Text | None = Field(default=None, description="Role or desk to ask for.")
    address: Text | None = Field(default=None, description="Postal address.")
    phone: Text | None = Field(default=None, description="Telephone number.")
    email: Text | None = Field(default=None, description="E-mail address.")


class Revision(Block):
    """One row of the revision table."""

    index: Annotated[str, StringConstraints(pattern=r"^[A-Z0-9]{1,4}$")] = Field(
        description="Revision index: A, B, ..."
    )
    change: Text = Field(description="What changed.")
    date: Date = Field(description="Date of the change, YYYY-MM-DD.")
    drawn: Text | None = Field(default=None, description="Who drew it (role or initials).")
    checked: Text | None = Field(default=None, description="Who checked it (role or initials).")
    places: list[Text] = Field(
        default=[],
        description="Where it changed something: paths such as `inverters.north.inputs[0]` (entries count from 0), or "
        "designations that are printed, such as -TB1. Those of the newest revision carry its triangle on the diagram.",
    )


class Project(Block):
    """The job and the people: title block and revision table."""

    title: Text = Field(description="What the drawing is of.")
    subtitle: Text | None = Field(default=None, description="Second line of the title.")
    reference: Text | None = Field(default=None, description="Project reference.")
    drawing_number: Text | None = Field(default=None, description="Identification number of the drawing.")
    date: Date | None = Field(
        default=None, description="Date of issue, YYYY-MM-DD. Left out, the newest revision's date."
    )
    customer: Text | None = Field(default=None, description="Customer.")
    address: Text | None = Field(default=None, description="Address of the site.")
    owner: Text | None = Field(
        default=None, description="Legal owner of the drawing. Left out, the designer's company."
    )
    designer: Party | None = Field(default=None, description="Who designs.")
    installer: Party | None = Field(default=None, description="Who installs.")
    parties: list[Party] = Field(default=[], description="Others with a part in the work, each with its `role`.")
    drawn_by: Text | None = Field(default=None, description="Creator, printed in the title block.")
    approved_by: Text | None = Field(default=None, description="Approval person, printed in the title block.")
    document_status: Text | None = Field(default=None, description="For example: for notification, as built.")
    logo: Text | None = Field(
        default=None,
        description="File with your logo, PNG or SVG (text as paths), in the folder of the spec or below it; it is "
        "printed in the title block.",
    )
    installed: Date | None = Field(default=None, description="Installation date.")
    commissioned: Date | None = Field(default=None, description="Commissioning date.")
    language: Annotated[str, AfterValidator(_known_language)] = Field(
        default="en", description=f"Language of the drawing and the documents: {', '.join(known_languages())}."
    )
    revisions: list[Revision] = Field(default=[], description="Revisions, oldest first.")


class Drawing(Block):
    """How the drawing is made."""

    paper: Literal["A4", "A3", "A2", "A1", "A0"] = Field(
        default="A3",
        description="Sheet size asked for; a larger one is taken when the diagram needs it, and the sheet says so.",
    )
    symbols: Literal["IEC", "ANSI"] | None = Field(
        default=None,
        description="Family of graphical symbols: IEC 60617 or ANSI (IEEE 315). Left out, ANSI with a profile of the "
        "NEC, else IEC.",
    )
    colour: Literal["monochrome", "restrained"] = Field(
        default="monochrome",
        description="Black only, or conductors in four dark colours besides their width and pattern: DC, AC, earth, "
        "data. Printed black and white, both tell the same.",
    )
    largest_paper: Literal["A4", "A3", "A2", "A1", "A0"] | None = Field(
        default=None,
        description="Largest sheet that may be taken; a diagram that needs more is drawn on several sheets of the size "
        "asked for. Left out, A2, which can still be read when it is printed on A3.",
    )
    reader: Literal["full", "operator", "crew"] = Field(
        default="full",
        description="For whom it is drawn: `operator` leaves out what only those who wire need and adds a table for "
        "the review; `crew` leaves out what only a reviewer needs.",
    )
    font: Text | None = Field(
        default=None,
        description="File of a TrueType or OpenType font, in the folder of the spec or below it, for letters that the "
        "font of the sheets lacks, such as Chinese, Japanese and Korean ones: only the letters that are used go into "
        "the files. Whether its licence lets it be embedded is yours to see to.",
    )
    stamp_box: bool = Field(
        default=False, description="Keep an empty box free above the title block of sheet 1, for the reviewer's stamp."
    )
    designation_letters: Literal[1, 2] = Field(
        default=2, description="Letters of a reference designation: -TB1 (2) or -T1 (1)."
    )
    draw_once_from: Annotated[int, Field(ge=2)] = Field(
        default=4, description="The least number of equal branches in a row that are drawn once, with their number."
    )
    unfold: bool = Field(default=False, description="Draw every branch, however many are equal.")
