"""What is printed, as meaning: words are chosen last, in the language of the drawing.

Through the house moves what is to be said, a `Phrase` with its values; `Language.say` makes text of it. English stands
in the code beside what it tells of and is the identifier in the catalogues; each further language is a file, `CODE.po`.
"""

from sld.words.language import ENGLISH, Language, known_languages, language
from sld.words.phrase import (
    NOTHING,
    Amount,
    Day,
    Phrase,
    Said,
    Sayable,
    Sequence,
    Span,
    Value,
    Verbatim,
    amount,
    capitalised,
    counted,
    listing,
    of_count,
    phrase,
    phrase_in,
    sequence,
    span,
    unbroken,
    verbatim,
)

__all__ = [
    "ENGLISH",
    "NOTHING",
    "Amount",
    "Day",
    "Language",
    "Phrase",
    "Said",
    "Sayable",
    "Sequence",
    "Span",
    "Value",
    "Verbatim",
    "amount",
    "capitalised",
    "counted",
    "known_languages",
    "language",
    "listing",
    "of_count",
    "phrase",
    "phrase_in",
    "sequence",
    "span",
    "unbroken",
    "verbatim",
]
