"""Which printed values rest on what is from memory, so that none is taken for one that was read in its source."""

from __future__ import annotations

from collections.abc import Sequence

from sld.citation import MEMORY_SIGN, rests_on_memory
from sld.documents.drawing.findings import is_from_memory
from sld.documents.section import Paragraphs
from sld.layout.diagram.flags import Flag
from sld.readers import READERS
from sld.steps import Ratings
from sld.words import Value, phrase, verbatim

__all__ = ["from_memory"]


def from_memory(ratings: Ratings, reader: str, flags: Sequence[Flag]) -> Paragraphs:
    """Return what the sign for values from memory means, and the symbols of all whose table, limit or formula is.

    reader: who has the calculation is sent there, everybody else to whoever made it. flags: their findings bear the
    sign too.
    """
    # equal ratings are kept as one object; to ask which are equal takes longer than to look at each
    once = {id(rating): rating for _, rating in ratings.kept()}.values()
    symbols = dict.fromkeys(str(rating.symbol) for rating in once if rests_on_memory(rating))
    signed = any(is_from_memory(flag.findings[0]) for flag in flags)
    named: dict[str, Value] = {"sign": MEMORY_SIGN, "symbols": verbatim("; ".join(symbols) or "–")}
    told = (
        phrase(
            "{sign} rests on a clause, a table, a limit or a formula from memory, which awaits comparison with its "
            "source: {symbols}. The calculation names it at each value.",
            **named,
        )
        if "calculation" in READERS[reader].documents
        else phrase(
            "{sign} rests on a clause, a table, a limit or a formula from memory, which awaits comparison with its "
            "source: {symbols}. The designer's calculation, which is not part of these papers, names it at each value.",
            **named,
        )
    )
    return Paragraphs("from_memory", phrase("From memory"), (told,) if symbols or signed else ())
