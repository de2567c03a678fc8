"""What is assumed is said: assumptions are findings of their own severity, printed on the sheet."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from sld.citation import cited
from sld.finding import RULES, Finding, Rule, Severity, SpecPath
from sld.frozen import dataclass
from sld.words import Phrase, phrase

__all__ = ["Assumption", "assumed"]

_CODES = {
    "AS01": (
        phrase("device or value assumed"),
        "The spec leaves out something that the drawing cannot do without. The usual one is "
        "drawn and said; write it into the spec if it is right, or write what is really there.",
    ),
    "AS02": (
        phrase("design value assumed"),
        "A rating needs a value that the spec does not give. A cautious one is used and printed "
        "beside the number that used it.",
    ),
}

_CLAUSE = cited(phrase("common practice, no source"))

for _code, (_title, _text) in _CODES.items():
    RULES.setdefault(_code, Rule(_code, _title, Severity.ASSUMPTION, _CLAUSE, _text, None))


@dataclass(frozen=True, slots=True)
class Assumption:
    """What was added or chosen because the spec leaves it out, and what to write there.

    at: the place of the spec. device: the key of the device that it is about, empty for the whole system.
    """

    what: Phrase
    remedy: Phrase
    at: SpecPath
    device: str = ""


def assumed(assumptions: Iterable[Assumption]) -> Iterator[Finding]:
    """Yield the findings that say assumptions."""
    said: dict[int, Phrase] = {}  # one is shared by what is assumed of equal inverters
    for each in assumptions:
        if (message := said.get(id(each.what))) is None:
            message = said[id(each.what)] = phrase("assumed: {what}", what=each.what)
        yield Finding("AS01", Severity.ASSUMPTION, message, each.remedy, each.at, each.device)
