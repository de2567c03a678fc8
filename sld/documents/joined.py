"""The documents of several parts of a drawing, each behind a supply point of its own, as one document."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from sld.documents.document import Document, OfTheDiagram
from sld.documents.section import FlaggedList, Form, Paragraphs, Section, Table
from sld.frozen import replace
from sld.words import Sayable, phrase, sequence

__all__ = ["joined"]

_Sections = Sequence[tuple[Sayable, Section | OfTheDiagram]]
"""Sections, each with what the supply point is called that it tells of."""


def joined(parts: Sequence[tuple[Sayable, Document]], order: Sequence[str]) -> Document:
    """Return one document with what all parts say. parts: each with what its supply point is called.

    order: the names of the sections in their order. What several say alike stands once; lists of one title become one,
    forms that differ one for each supply point. What has another title, because it tells of one part alone, stays a
    section of its own behind that of the first.
    """
    documents = [document for _, document in parts]
    first, *others = documents
    if not others:
        return first
    told = sorted(
        ((called, each) for called, document in parts for each in document.sections),
        key=lambda each: order.index(_stem(each[1])),
    )
    sections: list[Section | OfTheDiagram] = []
    for title in dict.fromkeys(_title(each) for _, each in told):
        sections += _together([each for each in told if _title(each[1]) == title], len(parts))
    keywords = dict.fromkeys(word for each in documents for word in each.metadata.keywords)
    return replace(
        first,
        sections=tuple(_named_apart(sections)),
        metadata=replace(first.metadata, keywords=tuple(keywords)),
        description=sequence([each.description for each in documents], " "),
        hover={key: text for each in documents for key, text in each.hover.items()},
        indexed={key: of for each in documents for key, of in each.indexed.items()},
        measured={key: of for each in documents for key, of in each.measured.items()},
        designations={key: name for each in documents for key, name in each.designations.items()},
    )


def _name(section: Section | OfTheDiagram) -> str:
    return section.value if isinstance(section, OfTheDiagram) else section.name


def _stem(section: Section | OfTheDiagram) -> str:
    """Return the name of a section without the number that tells it from others of that name."""
    return re.sub(r"-\d+$", "", _name(section))


def _title(section: Section | OfTheDiagram) -> tuple[str, Sayable | None]:
    return _stem(section), None if isinstance(section, OfTheDiagram) else section.title


def _together(sections: _Sections, count: int) -> Iterator[Section | OfTheDiagram]:
    """Yield sections of one title as one. count: of the parts that there are."""
    first = sections[0][1]
    match first:
        case Table():
            rows = [row for _, each in sections if isinstance(each, Table) for row in each.rows]
            yield replace(first, rows=tuple(dict.fromkeys(rows)))
        case FlaggedList():
            flagged = [row for _, each in sections if isinstance(each, FlaggedList) for row in each.rows]
            yield replace(first, rows=tuple(flagged))
        case Form():
            forms = {each.fields: (called, each) for called, each in sections if isinstance(each, Form)}
            for called, each in forms.values():
                yield replace(each, title=sequence([each.title, called], ": ")) if len(forms) > 1 else each
        case Paragraphs():
            lists = [(called, each.paragraphs) for called, each in sections if isinstance(each, Paragraphs)]
            yield replace(first, paragraphs=tuple(_paragraphs(lists, count)))
        case OfTheDiagram():
            yield first


def _paragraphs(lists: Sequence[tuple[Sayable, Sequence[Sayable]]], count: int) -> Iterator[Sayable]:
    """Yield what all parts say, where it comes first, and what some of them say with what their supply is called."""
    told: set[Sayable] = set()
    for called, paragraphs in lists:
        for text in paragraphs:
            if count == sum(text in each for _, each in lists):
                if text not in told:
                    yield text
                told.add(text)
            else:
                yield phrase("{supply}: {text}", supply=called, text=text)


def _named_apart(sections: Iterable[Section | OfTheDiagram]) -> Iterator[Section | OfTheDiagram]:
    """Yield sections with names of their own: what is written to a file by its name is not lost."""
    used: set[str] = set()
    for each in sections:
        if isinstance(each, OfTheDiagram):
            yield each
            continue
        stem, number = _stem(each), 1
        while (name := stem if number == 1 else f"{stem}-{number}") in used:
            number += 1
        used.add(name)
        yield replace(each, name=name)
