"""Which printed values rest on what is from memory, so that none is taken for one that was read in its source."""

from __future__ import annotations

from sld.citation import Mark, marks
from sld.documents.section import Paragraphs
from sld.quantity import Rating
from sld.steps import Ratings
from sld.words import phrase, verbatim

__all__ = ["from_memory", "rests_on_memory"]

_OF_THE_VALUE = frozenset({Mark.FROM_MEMORY, Mark.FORMULA_FROM_MEMORY})
"""Where only the number of a clause is from memory, the value was read."""


def rests_on_memory(rating: Rating) -> bool:
    """Return whether the table row, the limit or the formula behind a rating is from memory."""
    return bool(_OF_THE_VALUE & marks(rating.clause, rating.table_row))


def from_memory(ratings: Ratings) -> Paragraphs:
    """Return the symbols of all values on the drawing whose table, limit or formula is marked from memory."""
    symbols = dict.fromkeys(str(rating.symbol) for _, rating in ratings if rests_on_memory(rating))
    told = phrase(
        "Values of these symbols rest on a table, a limit or a formula from memory, which awaits comparison with its "
        "source: {symbols}. The calculation names it at each value.",
        symbols=verbatim("; ".join(symbols)),
    )
    return Paragraphs("from_memory", phrase("From memory"), (told,) if symbols else ())
