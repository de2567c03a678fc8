"""How each rating of a device came about, step by step, in the terminal."""

from __future__ import annotations

from pathlib import Path
from textwrap import wrap
from typing import TYPE_CHECKING

import typer

from sld.cli.outcome import UNUSABLE
from sld.cli.terminal import line, say, show_finding
from sld.documents.derivation import Entity, derived, entities
from sld.words import ENGLISH

if TYPE_CHECKING:
    from sld.door.design import Design

__all__ = ["explain_spec"]

_WIDTH = 100
_LABEL_WIDTH = 18


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
    found = {key: each for part in design.checked.parts for key, each in entities(part.system).items()}
    if device is None:
        _all(design, found)
        return
    try:
        key = design.key(device)
    except LookupError as missing:
        say(f"{spec}: {missing}; `sld explain {spec}` lists all")
        raise typer.Exit(UNUSABLE) from None
    _one(design, found[key])


def _all(design: Design, found: dict[str, Entity]) -> None:
    rows = [(each.designation, ENGLISH.say(each.what), _where(design, each)) for each in found.values()]
    name_width, what_width = (max(len(row[at]) for row in rows) for at in (0, 1))
    for name, what, where in rows:
        line(f"{name:{name_width}}  {what:{what_width}}  {where}")


def _where(design: Design, entity: Entity) -> str:
    if entity.at is None:
        return "not in the spec, assumed"
    return str(design.checked.source.locate(entity.at, True))


def _one(design: Design, entity: Entity) -> None:
    line(f"{entity.designation}  {ENGLISH.say(entity.what)}  {_where(design, entity)}")
    for each in derived(design.part(entity.key).ratings, entity.key):
        line()
        head = "  ".join(filter(None, [each.symbol, ENGLISH.say(each.meaning)]))
        line(f"{head}: {ENGLISH.say(each.value)}")
        for label, said in each.steps:
            for at, text in enumerate(wrap(ENGLISH.say(said), _WIDTH - _LABEL_WIDTH - 2)):
                line(f"  {ENGLISH.say(label) if not at else '':{_LABEL_WIDTH}}{text}")
    for finding in design.findings:
        if finding.device == entity.key:
            line()
            show_finding(design.checked.source, finding)
