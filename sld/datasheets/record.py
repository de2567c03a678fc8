"""The values of one data sheet as a table has them: what cannot be, what is missing, and its text in a types file."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from copy import deepcopy
from textwrap import wrap
from typing import Any, Literal

from sld import spec
from sld.frozen import dataclass
from sld.spec.blocks.block import Block
from sld.spec.blocks.inverter import InverterType, MppInput
from sld.spec.blocks.module import ModuleType
from sld.spec.language.blocks import fields_by_key
from sld.spec.language.draft import Answers, draft
from sld.spec.language.forms import flow, written

__all__ = ["BLOCKS", "INPUTS", "Kind", "Record", "faults", "gaps", "types_file"]

Kind = Literal["modules", "inverters"]

BLOCKS: Mapping[Kind, type[Block]] = {"modules": ModuleType, "inverters": InverterType}
INPUTS = "inputs"
"""The key of an inverter under which the limits of its inputs stand."""

_MISSING = "SP31"
_WIDTH = 100
_EXAMPLE = {"modules": "module of the data sheet", "inverters": "inverter of the data sheet"}


@dataclass(frozen=True, slots=True)
class Record:
    """One row of a table. values: by the keys of the spec, as they are written there. source: table and row."""

    kind: Kind
    name: str
    values: Mapping[str, Any]
    source: str


def faults(record: Record) -> list[str]:
    """Return why a row cannot be, or is so unusual that a spec would have to accept it; nothing where it may be.

    It is read as a part of a whole spec, so that it is held to what every spec is held to.
    """
    source, _ = spec.load_text(draft(Answers()))
    whole = deepcopy(source.data)
    whole["types"][record.kind][_EXAMPLE[record.kind]] = dict(record.values)
    place = ("types", record.kind, _EXAMPLE[record.kind])
    try:
        spec.load_mapping(whole)
    except spec.Unusable as unusable:
        own = [each for each in unusable.findings if each.at[:3] == place and each.code != _MISSING]
        return [str(each.message).replace(f"types.{record.kind}.{_EXAMPLE[record.kind]}", record.name) for each in own]
    return []


def gaps(record: Record) -> list[str]:
    """Return the keys that a spec needs and the row has not, those of an inverter's inputs as `inputs.current_max`."""
    found = list(_needed(BLOCKS[record.kind], record.values))
    if record.kind == "inverters":
        given = record.values.get(INPUTS) or [{}]
        found = [each for each in found if each != INPUTS]
        found += [f"{INPUTS}.{key}" for key in _needed(MppInput, given[0])]
    return found


def _needed(block: type[Block], given: Mapping[str, Any]) -> Iterator[str]:
    return (key for key, field in fields_by_key(block).items() if field.is_required() and key not in given)


def types_file(records: Iterable[Record], remark: str) -> str:
    """Return the text of a types file; what a row has not is named in a comment, and nothing is put in its place.

    remark: a line for its head.
    """
    lines = [f"# {remark}", "# Compare each value with the data sheet of the maker before you rely on it.", "types:"]
    of_kind: dict[Kind, list[Record]] = {}
    for each in records:
        of_kind.setdefault(each.kind, []).append(each)
    for kind, members in of_kind.items():
        lines.append(f"  {kind}:")
        for each in members:
            lines += [f"    # {each.source}", f"    {written(each.name)}:"]
            lines += [f"      {key}: {flow(value)}" for key, value in each.values.items()]
            lines += _gap_lines(each)
    return "\n".join([*lines, ""])


def _gap_lines(record: Record) -> Iterator[str]:
    block = BLOCKS[record.kind]
    needed = gaps(record)
    for key in needed:
        own = key.removeprefix(f"{INPUTS}.")
        about = fields_by_key(block if own == key else MppInput)[own].description or ""
        yield f"      # {key}:  # needed, not in the table: {about.split('. ')[0].rstrip('.')}"
    rest = [key for key in fields_by_key(block) if key not in record.values and key not in needed and key != INPUTS]
    for line in wrap(f"not in the table, may be given: {', '.join(rest)}", _WIDTH) if rest else ():
        yield f"      # {line}"
