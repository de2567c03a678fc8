"""What belongs on sheet 1 beside the diagram, whether it stands there, and what is said where it does not."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from sld.documents.title import TitleBlock
from sld.frozen import replace
from sld.sheet.flow import Dealt, Manner, Remembered, flow
from sld.sheet.listings.flag import FINDINGS
from sld.sheet.placement import Placement
from sld.sheet.sheet import Group
from sld.words import Language, phrase

__all__ = ["belongs_on_it", "lacking", "most_needed_first", "saying_where", "stands_on_it", "stem", "with_longest"]

_BELONG = ("cautions", FINDINGS, "accepted", "summary", "review")
"""Sections that belong on sheet 1, the most needed first: where not all fit, the cautions, which are short, do."""

_LAST_NUMBER = 99
"""A number of a sheet that is as wide as any that the findings may be listed on."""


def stem(name: str) -> str:
    """Return the name of a section; those of a further supply point have its number behind it."""
    return name.partition("-")[0]


def belongs_on_it(name: str) -> bool:
    """Return whether a section belongs on sheet 1."""
    return stem(name) in _BELONG


def lacking(listings: Iterable[Remembered], sheets: Sequence[Sequence[Dealt]]) -> tuple[int, ...]:
    """Return what is not on sheet 1 of these listings, the worst first: zeros where nothing is lacking.

    Whether dangers and non-compliances are, the cautions, how many of those dangers and non-compliances, the accepted
    deviations, and how many summaries. Advice may go on elsewhere.
    """
    elsewhere = {each.section for tables in sheets[1:] for each in tables}
    urgent_count = sum(each.urgent_count for each in listings if each.name == FINDINGS)
    told_count = max((each.end_count for each in sheets[0] if each.section == FINDINGS), default=0)
    untold_count = max(0, urgent_count - told_count)
    stems = [stem(name) for name in elsewhere]
    summaries_count = stems.count("summary") + stems.count("review")
    return untold_count > 0, "cautions" in stems, untold_count, "accepted" in stems, summaries_count


def most_needed_first(listings: Sequence[Remembered]) -> list[list[Remembered]]:
    """Return the orders in which what belongs on sheet 1 comes before all else, the most needed first."""
    others = [each for each in listings if not belongs_on_it(each.name)]
    needed = [each for each in listings if belongs_on_it(each.name)]
    by_need = sorted(needed, key=lambda each: _BELONG.index(stem(each.name)))
    findings_first = sorted(by_need, key=lambda each: each.name != FINDINGS)
    orders = [by_need] if by_need == findings_first else [findings_first, by_need]
    return [[*order, *others] for order in orders]


def stands_on_it(needed: Sequence[Remembered], placements: Iterable[Placement], language: Language) -> bool:
    """Return whether all that belongs on sheet 1 stands beside the diagram. placements: of that, each tried in turn."""
    orders = [needed, *most_needed_first(needed)]
    return any(
        not any(lacking(needed, flow(order, at.columns, at.columns, Manner(language))))
        for at in placements
        if at.columns or not needed
        for order in orders
    )


def saying_where(block: TitleBlock, sheets: Sequence[Sequence[Dealt | Group]]) -> TitleBlock:
    """Return the title block with the sheets on which the findings are listed, unless that is the first one alone."""
    numbers = [n for n, shown in enumerate(sheets, 1) if any(each.section == FINDINGS for each in shown)]
    return _listed(block, numbers[0], numbers[-1]) if numbers and numbers[-1] > 1 else block


def with_longest(block: TitleBlock) -> TitleBlock:
    """Return the title block as high as it may become by saying where the findings are listed."""
    return _listed(block, _LAST_NUMBER - 1, _LAST_NUMBER)


def _listed(block: TitleBlock, first: int, last: int) -> TitleBlock:
    said = phrase("{findings}; see sheet {number}", findings=block.findings, number=first)
    if first < last:
        said = phrase("{findings}; see sheets {first} to {last}", findings=block.findings, first=first, last=last)
    return replace(block, findings=said)
