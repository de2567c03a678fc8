"""One cell of a document: what is said, how it is known, and the ratings behind it."""

from __future__ import annotations

from enum import Enum

from sld.citation import with_mark
from sld.frozen import dataclass, replace
from sld.quantity import Origin, Rating
from sld.words import NOTHING, Sayable, Sequence, verbatim
from sld.words.phrase import Speaker

__all__ = [
    "EMPTY",
    "FILL_IN",
    "NOT_GIVEN",
    "Cell",
    "Designations",
    "State",
    "answer",
    "answering",
    "by_ratings",
    "computed",
    "designated",
    "given",
    "of_rating",
]


class State(Enum):
    """How the value of a cell is known."""

    GIVEN = "given"
    """The spec says it."""
    COMPUTED = "computed"
    """A rating says it: a formula with its inputs and clause; or it is a count or sum of what the spec says."""
    CHOSEN = "chosen"
    """The smallest or largest standard value that fits was taken, because the spec leaves it out."""
    ASSUMED = "assumed"
    """The spec leaves it out and a usual value was taken; the assumption is told."""
    BLANK = "blank"
    """Not known: to be filled in by hand."""
    NOT_APPLICABLE = "not applicable"
    """There is nothing to fill in, and the cell says why."""
    UNCONFIRMED = "unconfirmed"
    """From a source that is not confirmed, which the cell names."""
    LAID_DOWN = "laid down"
    """The confirmed rules of a country say it; the cell names them."""


@dataclass(frozen=True, slots=True)
class Designations:
    """Designations, in groups with a dash between: both ends of a cable. rest: what stands behind them.

    short: the same without the owner that the designation of the row begins with too; empty where they are not all of
    that owner. On paper the owner is said once.
    """

    groups: tuple[tuple[str, ...], ...]
    rest: Sayable = NOTHING
    short: tuple[tuple[str, ...], ...] = ()

    def said(self, speaker: Speaker) -> str:
        """Return the designations and the rest."""
        names = " – ".join(", ".join(group) for group in self.groups)
        rest = self.rest.said(speaker)
        return ", ".join(part for part in (names, rest) if part)


@dataclass(frozen=True, slots=True)
class Cell:
    """What is said in one place. ratings: where the value comes from, for its trace. why: the reason or source.

    answers: the question of an operator, a permit office or an inspection body that it answers, by the name that
    `sld.documents.completeness` looks for; empty for all other cells.
    """

    text: Sayable
    state: State
    ratings: tuple[Rating, ...] = ()
    why: Sayable = NOTHING
    answers: str = ""

    def said(self, speaker: Speaker) -> str:
        """Return the text of the cell."""
        return self.text.said(speaker)


EMPTY = Cell(NOTHING, State.NOT_APPLICABLE)
"""A cell that holds nothing because its row needs nothing there."""

NOT_GIVEN = Cell(verbatim("–"), State.BLANK)
"""Not given in the spec and not needed to be."""


FILL_IN = Cell(verbatim("____________"), State.BLANK)
"""A line to write on: somebody has to know it, and the spec does not say it."""


def given(text: Sayable | str) -> Cell:
    """Return a cell of what the spec says; the sign for `not given` where that is nothing."""
    said = verbatim(text) if isinstance(text, str) else text
    return NOT_GIVEN if _is_nothing(said) else Cell(said, State.GIVEN)


def answer(question: str, text: Sayable | str | None) -> Cell:
    """Return a cell of what the spec says in answer to a question, or a blank one. question: as of `Cell.answers`."""
    return replace(given(text or NOTHING), answers=question)


def answering(question: str, cell: Cell) -> Cell:
    """Return a cell as the answer to a question."""
    return replace(cell, answers=question)


def _is_nothing(said: Sayable) -> bool:
    parts = said.parts if isinstance(said, Sequence) else (said,)
    return all(part in ("", NOTHING) for part in parts)


def computed(text: Sayable) -> Cell:
    """Return a cell of a count or sum of what the spec says."""
    return Cell(text, State.COMPUTED)


def designated(*names: str, rest: Sayable = NOTHING) -> Cell:
    """Return a cell of designations, one in each group, and what stands behind them."""
    return Cell(Designations(tuple((name,) for name in names), rest), State.GIVEN)


_STATES = {
    Origin.ASSUMED: State.ASSUMED,
    Origin.CHOSEN: State.CHOSEN,
    Origin.COMPUTED: State.COMPUTED,
    Origin.GIVEN: State.GIVEN,
}
"""The least certain first."""


def by_ratings(text: Sayable, *ratings: Rating) -> Cell:
    """Return a cell that says ratings, known as the least certain of them is; of the spec where there are none."""
    origins = {Origin.ASSUMED if rating.assumptions else rating.origin for rating in ratings}
    state = next((state for origin, state in _STATES.items() if origin in origins), State.GIVEN)
    return Cell(text, state, ratings)


def of_rating(rating: Rating | None, text: Sayable | None = None) -> Cell:
    """Return a cell of a rating, marked if it is from memory; the sign for `not given` where there is none.

    text: how it is said there.
    """
    if rating is None:
        return NOT_GIVEN
    return by_ratings(with_mark(text or rating, rating), rating)
