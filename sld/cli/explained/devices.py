"""How each rating of a device came about, step by step, in the terminal."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from textwrap import wrap
from typing import TYPE_CHECKING

import typer

from sld.cli.outcome import UNUSABLE
from sld.cli.terminal import line, say, show_finding
from sld.model.kinds.units import DATA_CABLE, EARTH_CONDUCTOR
from sld.words import ENGLISH, Said, Value, amount, sequence

if TYPE_CHECKING:
    from sld.door.design import Design
    from sld.finding import SpecPath
    from sld.model.system import System
    from sld.quantity import Rating
    from sld.spec.source import Source

__all__ = ["explain_spec"]

_WIDTH = 100
_LABEL_WIDTH = 14
_GOVERNED_BY = "governed by"


def explain_spec(spec: Path, device: str | None, *, allow_outside: bool) -> None:
    """Print the devices of a spec, or how each rating of one of them came about, with what was found at it."""
    from sld.door.load import load
    from sld.spec import Unusable

    try:
        design = load(spec, allow_outside=allow_outside)
    except Unusable as mistakes:
        for each in mistakes.findings:
            show_finding(mistakes.source, each, chatter=True)
        raise typer.Exit(UNUSABLE) from None
    if device is None:
        _all(design)
        return
    try:
        key = design.key(device)
    except LookupError as missing:
        say(f"{spec}: {missing}; `sld explain {spec}` lists all")
        raise typer.Exit(UNUSABLE) from None
    _one(design, key)


@dataclass(frozen=True, slots=True)
class _Entity:
    """What has a designation: a device, a data cable or an earth conductor. at: None for what is assumed."""

    key: str
    designation: str
    what: str
    at: SpecPath | None

    def where(self, source: Source) -> str:
        return str(source.locate(self.at, True)) if self.at is not None else "not in the spec, assumed"


def _entities(design: Design) -> dict[str, _Entity]:
    """Return all that has a designation, by its key."""
    return {key: each for part in design.checked.parts for key, each in _of_part(part.system).items()}


def _of_part(system: System) -> dict[str, _Entity]:
    found = [
        _Entity(each.key, each.designation, ", ".join(filter(None, [_said(each.kind.word_of(each.given)), each.name])),
                None if each.assumed else each.at)
        for each in system.devices.values()
    ]  # fmt: skip
    found += [_Entity(each.key, each.designation, _said(DATA_CABLE.word), each.at) for each in system.chains]
    found += [
        _Entity(each.key, each.designation, f"{_said(EARTH_CONDUCTOR.word)}, {_said(each.to)}",
                None if each.assumed else each.at)
        for each in system.earth_conductors
    ]  # fmt: skip
    return {each.key: each for each in found}


def _all(design: Design) -> None:
    entities = _entities(design).values()
    widths = max(len(each.designation) for each in entities), max(len(each.what) for each in entities)
    for each in entities:
        line(f"{each.designation:{widths[0]}}  {each.what:{widths[1]}}  {each.where(design.checked.source)}")


def _one(design: Design, key: str) -> None:
    each = _entities(design)[key]
    line(f"{each.designation}  {each.what}  {each.where(design.checked.source)}")
    ratings = design.part(key).ratings
    shown = set[tuple[str, str]]()
    for rating in ratings.of(key):
        if (told := (_said(rating.symbol.meaning), _said(rating.trace()))) in shown:
            continue  # kept under two symbols, which a later step may tell apart
        shown.add(told)
        line()
        line(f"{rating.symbol}  {_said(rating.symbol.meaning)}: {rating.quantity()} ({rating.origin.value})")
        _show(_steps(rating))
    for (at, word), stated in ratings.words.items():
        if at == key:
            line()
            line(f"{_said(word.value)}: {_said(stated.value)}")
            _show([("source", stated.origin)])
    for (at, symbol), why in ratings.unanswered.items():
        if at == key:
            line()
            line(f"{symbol}  {_said(symbol.meaning)}: no value")
            _show([("why", str(why))])
    for finding in design.findings:
        if finding.device == key:
            line()
            show_finding(design.checked.source, finding)


def _steps(rating: Rating) -> Iterator[tuple[str, Said]]:
    """Yield what a value was worked out from and why it is that one."""
    yield "formula", rating.formula
    yield "put in", sequence([each for each in rating.given if each.name != _GOVERNED_BY], "; ")
    for each in rating.given:
        if each.name == _GOVERNED_BY:
            yield _GOVERNED_BY, _said(each.value)
    yield "source", rating.clause
    yield "table row", rating.table_row
    for assumed in rating.assumptions:
        yield "assumed", assumed
    for other in rating.passed_over:
        yield "passed over", other


def _show(steps: Iterable[tuple[str, Said]]) -> None:
    for label, said in steps:
        for at, text in enumerate(wrap(_said(said), _WIDTH - _LABEL_WIDTH - 2)):
            line(f"  {label if not at else '':{_LABEL_WIDTH}}{text}")


def _said(said: Value | float) -> str:
    return ENGLISH.say(amount(said) if isinstance(said, float) else sequence([said], ""))
