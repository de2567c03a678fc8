"""Many mistakes are told in bounded length: the first hundred of a file, and no value at full length."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

from sld.finding import Finding, Severity, SpecPath
from sld.frozen import dataclass, replace
from sld.spec.source import Source
from sld.spec.span import Span

__all__ = ["MOST_TOLD", "Place", "brief", "first_of_each_file", "in_order"]

MOST_TOLD = 100
_LONGEST_VALUE, _LONGEST_TEXT = 80, 600
_CUT = "…"
_QUOTED = re.compile(rf"`([^`]{{{_LONGEST_VALUE + 1},}})`")
_WORD = re.compile(rf"[^\s`]{{{_LONGEST_VALUE + 1},}}")


@dataclass(frozen=True, slots=True)
class Place:
    """Where a mistake is, and how it is told; that is None for one that goes without saying beside another."""

    at: SpecPath
    told: Callable[[], Finding | None]
    on_key: bool = False


def _shortened(match: re.Match[str]) -> str:
    text = match[0]
    return text[:_LONGEST_VALUE] + (f"{_CUT}`" if text.startswith("`") else _CUT)


def brief(finding: Finding) -> Finding:
    """Return a finding that quotes no value with more than 80 characters."""

    def cut(text: str) -> str:
        text = _WORD.sub(_shortened, _QUOTED.sub(_shortened, text))
        return text if len(text) <= _LONGEST_TEXT else text[:_LONGEST_TEXT] + _CUT

    return replace(finding, message=cut(str(finding.message)), remedy=cut(str(finding.remedy)))


def in_order(source: Source) -> Callable[[Span], tuple[int, int, int]]:
    """Return the order of the text as a key to sort places by, file after file."""
    order = {file: number for number, file in enumerate(source.texts)}
    return lambda span: (order.get(span.file, 0), span.line, span.column)


def first_of_each_file(source: Source, mistakes: Iterable[Place]) -> list[Finding]:
    """Return the findings on the first hundred mistakes of each file, and one that says how many more there are.

    Mistakes beyond these are counted and not looked into.
    """
    key = in_order(source)
    located = [(source.locate(each.at, each.on_key), number, each) for number, each in enumerate(mistakes)]
    located.sort(key=lambda each: (key(each[0]), each[1]))
    counts: dict[str, int] = {}
    more: dict[str, list[SpecPath]] = {}
    found: list[Finding] = []
    for span, _, mistake in located:
        if counts.get(span.file, 0) >= MOST_TOLD:
            more.setdefault(span.file, []).append(mistake.at)
        elif finding := mistake.told():
            counts[span.file] = counts.get(span.file, 0) + 1
            found.append(finding)
    for places in more.values():
        message = f"and {len(places):,} more {'mistake' if len(places) == 1 else 'mistakes'} from here on"
        found.append(Finding("SP40", Severity.DANGER, message, "correct those above first", places[0]))
    return found
