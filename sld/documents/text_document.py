"""What all documents without a diagram have in common: a title block, and first what holds for all that follows."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from sld.documents.document import Document
from sld.documents.section import Paragraphs, Section, is_empty
from sld.documents.title import metadata, title
from sld.finding import Finding
from sld.model.system import System
from sld.words import Phrase, Sayable, phrase

__all__ = ["head", "text_document"]


def text_document(
    system: System,
    found: Sequence[Finding],
    named: tuple[str, Phrase, int],
    description: Sayable,
    sections: Iterable[Section],
) -> Document:
    """Return a document on A4 that begins with the notes of `head`. Sections with nothing to say are left out.

    named: the document's name, what it is called, and what stands behind the drawing's number for it. found: all
    findings, which the title block counts.
    """
    name, called, part = named
    kept = (head(system, description), *(each for each in sections if not is_empty(each)))
    return Document(
        name=name,
        title=title(system, found, called, part),
        sections=kept,
        language=system.language,
        metadata=metadata(system),
        description=description,
        paper="A4",
        colour=system.drawing.colour,
    )


def head(system: System, description: Sayable) -> Paragraphs:
    """Return who decides before this document does, what it is, and whose designations it uses."""
    project = system.project
    newest = project.revisions[-1].index if project.revisions else ""
    number = project.drawing_number or project.reference or ""
    texts = [
        phrase(
            "Design aid. All of it is to be checked by a person licensed for such work, against the local rules, the "
            "network operator's conditions and the makers' manuals, which take precedence over this document. – stands "
            "for what nobody has given."
        ),
        phrase("{description} The designations are those of the single-line diagram.", description=description)
        if not number
        else phrase(
            "{description} The designations are those of the single-line diagram {number}.",
            description=description,
            number=number,
        )
        if not newest
        else phrase(
            "{description} The designations are those of the single-line diagram {number}, revision {revision}.",
            description=description,
            number=number,
            revision=newest,
        ),
    ]
    return Paragraphs("notes", phrase("Notes"), tuple(texts), numbered=True, sign="warning_triangle")
