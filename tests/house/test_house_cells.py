"""Cells of documents: none looks filled without saying how it is known; readers and documents name each other."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from functools import cache
from pathlib import Path
from typing import Any, get_args

import pytest
from example_specs import SAMPLED, SPECS, checked

from sld import layout, run
from sld.citation import MEMORY_SIGN, rests_on_memory
from sld.documents.cell import EMPTY, NOT_GIVEN, Cell, State
from sld.documents.document import Document
from sld.documents.registry import KINDS
from sld.documents.section import Form, Table
from sld.quantity import Origin, Rating
from sld.readers import READERS
from sld.spec.blocks.project import Drawing
from sld.words import ENGLISH, Amount


@cache
def documents(path: Path, reader: str = "", only: str = "") -> tuple[Document, ...]:
    found = checked(path)
    flags = layout.numbered_in_parts([(part.system, part.findings) for part in found.parts])
    made = []
    for part, own in zip(found.parts, flags, strict=True):
        drawing = part.system.drawing
        system = replace(part.system, drawing=drawing.model_copy(update={"reader": reader or drawing.reader}))
        kinds = [KINDS[only]] if only else KINDS.values()
        made += [kind.make(system, part.ratings, found.findings, own) for kind in kinds]
    return tuple(made)


def cells(document: Document) -> Iterator[tuple[str, Cell]]:
    for section in document.sections:
        if isinstance(section, Table):
            yield from ((f"{document.name}, {section.name}", cell) for row in section.rows for cell in row)
        elif isinstance(section, Form):
            yield from ((f"{document.name}, {section.name}", cell) for _, cell in section.fields)


def within(said: Any) -> Iterator[Any]:
    """What a text is made of, itself first."""
    yield said
    if isinstance(said, Rating):
        return
    if is_dataclass(said):
        for field in fields(said):
            yield from within(getattr(said, field.name))
    elif isinstance(said, tuple):
        for part in said:
            yield from within(part)


def wrong(cell: Cell) -> str:
    """What a cell pretends, or nothing."""
    text, parts = ENGLISH.say(cell), list(within(cell.text))
    printed = [part for part in parts if isinstance(part, Rating)]
    if any(each not in cell.ratings for each in printed):
        return "a rating is printed that is not behind it"
    origins = {Origin.ASSUMED if each.assumptions else each.origin for each in cell.ratings}
    numbers = [part for part in parts if isinstance(part, Amount | Rating)]
    match cell.state:
        case State.GIVEN:
            return "what the steps made passes for what the spec says" if origins - {Origin.GIVEN} else ""
        case State.COMPUTED:
            return "a choice or an assumption is not told" if origins - {Origin.GIVEN, Origin.COMPUTED} else ""
        case State.CHOSEN:
            return (
                "" if Origin.CHOSEN in origins and Origin.ASSUMED not in origins else "no rating says what was chosen"
            )
        case State.ASSUMED:
            return "" if Origin.ASSUMED in origins or ENGLISH.say(cell.why) else "nothing says what was assumed"
        case State.BLANK:
            return "a blank cell has a number" if numbers or any(each.isdigit() for each in text) else ""
        case State.NOT_APPLICABLE | State.UNCONFIRMED:
            return "" if cell == EMPTY or ENGLISH.say(cell.why) else "it does not say why"


@pytest.mark.parametrize("path", SAMPLED)
def test_no_cell_looks_filled_without_saying_how_it_is_known(path: Path) -> None:
    found = [
        f"{where}: {ENGLISH.say(cell)!r} ({cell.state.value}): {problem}"
        for document in documents(path)
        for where, cell in cells(document)
        if (problem := wrong(cell))
    ]
    assert not found, "\n".join(sorted(set(found))[:30])


def test_the_judgement_itself() -> None:
    """Each pretence is seen."""
    ratings = checked(SPECS[-1]).ratings
    rating = next(rating for _, rating in ratings if rating.assumptions)
    chosen = next(each for _, each in ratings if each.origin is Origin.CHOSEN and not each.assumptions)
    assert wrong(Cell(chosen, State.COMPUTED, (chosen,)))
    assert wrong(Cell(chosen, State.GIVEN, (chosen,)))
    assert not wrong(Cell(chosen, State.CHOSEN, (chosen,)))
    assert wrong(Cell(rating, State.GIVEN))
    assert wrong(Cell(rating, State.COMPUTED))
    assert wrong(Cell(rating, State.COMPUTED, (rating,)))
    assert wrong(Cell(rating, State.CHOSEN))
    assert wrong(Cell(rating, State.BLANK))
    assert wrong(Cell(EMPTY.text, State.UNCONFIRMED))
    assert not wrong(Cell(rating, State.ASSUMED, (rating,)))
    assert not wrong(NOT_GIVEN)
    assert not wrong(EMPTY)


def test_every_reader_of_the_spec_language_has_a_row() -> None:
    assert tuple(READERS) == get_args(Drawing.model_fields["reader"].annotation)


def test_readers_name_only_what_there_is() -> None:
    """A section that is left out is one of the drawing; every document has a reader, and its maker its name."""
    for reader in READERS.values():
        assert set(reader.documents) <= set(KINDS)
        assert reader.sections <= set(KINDS["drawing"].sections)
        assert {"cautions", "findings"}.isdisjoint(reader.sections), "what can kill is for everybody"
    assert all(kind.readers for kind in KINDS.values())
    assert tuple(KINDS) == run.DOCUMENTS
    assert [document.name for document in documents(SPECS[0])] == list(KINDS)


@pytest.mark.parametrize("path", SAMPLED)
def test_the_calculation_is_the_same_for_all_who_get_it(path: Path) -> None:
    """Tests that read what is printed for each reader draw it once."""
    first, *others = (documents(path, reader, "calculation") for reader in READERS)
    assert first
    assert all(each == first for each in others)


@pytest.mark.parametrize("path", SPECS, ids=lambda path: path.stem)
def test_what_is_from_memory_is_signed_on_a_drawing(path: Path) -> None:
    """The calculation has the mark beside it, in the columns of clause and row."""
    unsigned = [
        (place, ENGLISH.say(cell))
        for document in documents(path)
        if document.name == "drawing"
        for place, cell in cells(document)
        if any(isinstance(part, Rating) and rests_on_memory(part) for part in within(cell.text))
        and MEMORY_SIGN not in ENGLISH.say(cell)
    ]
    assert not unsigned
