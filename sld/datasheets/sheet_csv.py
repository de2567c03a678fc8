"""Data sheet values from a CSV: headings are words of the trade, each with its unit, `Uoc [V]`; a row is one type."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Mapping
from difflib import get_close_matches
from pathlib import Path
from typing import Any

from sld.datasheets.record import BLOCKS, INPUTS, Kind, Record
from sld.frozen import dataclass
from sld.spec.blocks.block import Block
from sld.spec.blocks.inverter import MppInput
from sld.spec.language.blocks import fields_by_key
from sld.spec.synonyms import meant

__all__ = ["UnusableTable", "records"]

_NAME = "name"
_HEADING = re.compile(r"\s*(?P<word>[^\[(]+?)\s*(?:[\[(]\s*(?P<unit>[^\])]+?)\s*[\])])?\s*")
_INPUT = re.compile(r"(?:mpp[ _-])?input[ _-]+(?P<word>.+)|(?:mpp[ _-])?inputs?|mppt count|trackers?", re.IGNORECASE)
_COMMA = re.compile(r"-?\d+,\d+")
_MOST_BYTES = 10_000_000


class UnusableTable(Exception):  # noqa: N818 - the table's fault, not the program's
    """The table cannot be read: where, and why."""


@dataclass(frozen=True, slots=True)
class _Column:
    """What a column holds: a key of the block, or of the inputs of an inverter, with the unit of its cells."""

    key: str
    unit: str
    of_input: bool = False


def records(path: Path) -> list[Record]:
    """Return the rows of a CSV. Raises UnusableTable, OSError.

    The kind is the one whose block knows all headings. Cells may have a unit of their own, which then counts.
    """
    rows = _rows(path)
    kind, columns = _columns(path, rows[0][1])
    found = []
    for number, cells in rows[1:]:
        if not any(cells):
            continue
        if len(cells) != len(columns):
            raise UnusableTable(f"{path}:{number}: {len(cells)} cells below {len(columns)} headings")
        found.append(_record(path, number, kind, dict(zip(columns, cells, strict=True))))
    if not found:
        raise UnusableTable(f"{path}: there is no row below the headings")
    names = [each.name for each in found]
    if again := sorted({each for each in names if names.count(each) > 1}):
        raise UnusableTable(f"{path}: two rows are called {again[0]}; a name is of one type")
    return found


def _rows(path: Path) -> list[tuple[int, list[str]]]:
    """Return the rows with their line numbers; comma, semicolon or tabulator, whichever the headings have most of."""
    raw = path.read_bytes()
    if len(raw) > _MOST_BYTES:
        raise UnusableTable(f"{path}: larger than {_MOST_BYTES // 1_000_000} MB, which no table of types is")
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise UnusableTable(f"{path}: not UTF-8; save the table as UTF-8 and try again") from None
    head = text.split("\n", 1)[0]
    delimiter = max(",;\t", key=head.count)
    reader = csv.reader(io.StringIO(text), delimiter=delimiter)
    rows = [(reader.line_num, [cell.strip() for cell in row]) for row in reader]
    if not rows or not any(rows[0][1]):
        raise UnusableTable(f"{path}:1: there are no headings")
    return [(n, [_point(cell) if delimiter != "," else cell for cell in row]) for n, row in rows]


def _point(cell: str) -> str:
    """Return a number with a decimal comma with a point; between commas as separators there is no such cell."""
    return cell.replace(",", ".") if _COMMA.match(cell) else cell


def _columns(path: Path, headings: list[str]) -> tuple[Kind, list[_Column | None]]:
    """Return the kind of types and what each column holds, None for the name. Raises UnusableTable."""
    unknown: dict[Kind, list[str]] = {}
    for kind, block in BLOCKS.items():
        columns = {each: _column(each, kind, block) for each in headings if not _is_name(each)}
        unknown[kind] = [each for each, column in columns.items() if column is None]
        if not unknown[kind]:
            return kind, [columns.get(each) for each in headings]
    kind = min(unknown, key=lambda each: len(unknown[each]))
    heading = unknown[kind][0]
    near = get_close_matches(heading.casefold().replace(" ", "_"), list(fields_by_key(BLOCKS[kind])), 1, 0.6)
    hint = f"did you mean {near[0]}?" if near else f"`sld keys` lists the keys of types.{kind}"
    raise UnusableTable(f"{path}:1: no value of {kind} is called {heading}; {hint}")


def _is_name(heading: str) -> bool:
    return heading.casefold() == _NAME


def _column(heading: str, kind: Kind, block: type[Block]) -> _Column | None:
    """Return what a column holds, None where the block has no such value."""
    parts = _HEADING.fullmatch(heading)
    if not parts:
        return None
    word, unit = parts["word"], parts["unit"] or ""
    if kind == "inverters" and (inputs := _INPUT.fullmatch(word)):
        key = _key(inputs["word"], MppInput) if inputs["word"] else "count"
        return _Column(key, unit, True) if key else None
    key = _key(word, block)
    return _Column(key, unit) if key else None


def _key(word: str, block: type[Block]) -> str:
    plain = re.sub(r"[\s-]+", "_", word.strip().casefold())
    known = fields_by_key(block)
    return next((each for each in (plain, *meant(word)) if each in known), "")


def _record(path: Path, number: int, kind: Kind, row: Mapping[_Column | None, str]) -> Record:
    values: dict[str, Any] = {}
    inputs: dict[str, Any] = {}
    for column, cell in row.items():
        if column is not None and cell:
            into = inputs if column.of_input else values
            into[column.key] = _value(cell, column.unit)
    if inputs:
        values[INPUTS] = [inputs]
    name = row.get(None) or " ".join(filter(None, [str(values.get("make", "")), str(values.get("model", ""))]))
    if not name:
        raise UnusableTable(f"{path}:{number}: the row has no name, make or model")
    return Record(kind, name, values, f"{path.name}, row {number}")


def _value(cell: str, unit: str) -> str | int | bool:
    if cell.casefold() in ("yes", "no", "true", "false"):
        return cell.casefold() in ("yes", "true")
    if re.fullmatch(r"-?\d+", cell) and not unit:
        return int(cell)
    return f"{cell} {unit}" if unit and re.fullmatch(r"[-+]?[\d.]+(?:[eE][-+]?\d+)?", cell) else cell
