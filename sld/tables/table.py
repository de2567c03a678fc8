"""The one reader of the published values kept as CSV beside this file.

A table is a CSV file. Its first lines are front matter, `# key: value`: title, unit, source, edition, status ("seen" or
"from memory"), note, and optionally `short`, the words by which a drawing cites it (default: the title), and `keys`,
the columns that name a row (default: the first column). A row may overrule source and status with columns of those
names, and a row from memory may list in a column `seen` the columns of it that were seen all the same. Nothing is
interpolated: a value between two rows is a `NoRow`; `at_least` and `at_most` take the next row up or down, for the
formulas whose cautious side that is.
"""

from __future__ import annotations

import csv
from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from itertools import pairwise
from operator import itemgetter
from pathlib import Path

from sld.citation import Citation, Mark, cited
from sld.frozen import dataclass, replace
from sld.tables.headings import in_words
from sld.words import ENGLISH, Sayable, sequence
from sld.words.cell import of_cell

__all__ = ["NoRow", "Row", "Table", "all_tables", "next_at_least", "parse_table", "series", "table"]

Key = str | float | int
"""What a row is asked for by: numbers match by value (`6` finds `6` and `6.0`), words by their letters."""

_FOLDER = Path(__file__).parent
_REQUIRED = ("title", "unit", "source", "edition", "status")
_NO_END = "inf"
_STATUSES: dict[str, Mark | None] = {"seen": None, "from memory": Mark.FROM_MEMORY}
"""What a row may say of itself, and the mark that is printed with it."""


class NoRow(KeyError):  # noqa: N818 - it is an answer, "the table has no such row"
    """A table has no row, or an empty cell, for what was asked. The message names the table and the nearest values."""

    def __str__(self) -> str:
        return str(self.args[0])


@dataclass(frozen=True, slots=True)
class Row:
    """One row of a table: `row["column"]` is its text, `row.number("column")` its number.

    table: the name of its table. cited: the words by which a drawing cites the table. below: of a row without an upper
    end (`inf` in the file) the end of the row before it. seen: columns that were seen though the row is from memory.
    """

    table: str
    cited: str
    cells: Mapping[str, str]
    keys: tuple[str, ...]
    source: str
    status: str
    below: str = ""
    seen: frozenset[str] = frozenset()

    def __getitem__(self, column: str) -> str:
        try:
            return self.cells[column]
        except KeyError:
            raise NoRow(f"table {self.cited} has no column {column}; it has {', '.join(self.cells)}") from None

    def has(self, column: str) -> bool:
        """Return whether the cell of that column holds something."""
        return bool(self[column])

    def number(self, column: str) -> float:
        """Return the cell as a number. Raises NoRow for an empty cell, ValueError for a word."""
        text = self[column]
        if not text:
            raise NoRow(f"{ENGLISH.say(self.reference)} has no value for {column}")
        return float(text)

    def said(self, column: str) -> Sayable:
        """Return a cell that is printed as it stands; `PRINTED_COLUMNS` of `sld.words.extraction` lists the columns."""
        return of_cell(self[column])

    @property
    def mark(self) -> Mark | None:
        """Return the mark of a row that is from memory."""
        return _STATUSES[self.status]

    @property
    def reference(self) -> Citation:
        """Return how the row is cited: table and row in words, and that it is from memory where it is."""
        return self._reference(self.mark)

    def reference_of(self, column: str) -> Citation:
        """Return how the row is cited for its value in one column, which may have been seen where others were not."""
        return self._reference(None if column in self.seen else self.mark)

    def _reference(self, mark: Mark | None) -> Citation:
        return _reference(self.cited, tuple((key, self.cells[key]) for key in self.keys), self.below, mark)


@dataclass(frozen=True, slots=True, eq=False)
class Table:
    """A published table: its name (the file's stem), its front matter and its rows in the order of the file."""

    name: str
    front: Mapping[str, str]
    columns: tuple[str, ...]
    rows: tuple[Row, ...]

    def __iter__(self) -> Iterator[Row]:
        return iter(self.rows)

    def where(self, **keys: Key) -> tuple[Row, ...]:
        """Return every row that matches all keys, in the order of the file. Raises NoRow for an unknown column."""
        for column in keys:
            if column not in self.columns:
                raise NoRow(f"table {self.cited} has no column {column}; it has {', '.join(self.columns)}")
        return _matching(self, tuple(keys.items()))

    def pick(self, **keys: Key) -> Row:
        """Return the one row that matches all keys exactly.

        Raises NoRow, naming the nearest values present, where there is none; ValueError where there is more than one.
        """
        found = self.where(**keys)
        if not found:
            raise NoRow(self._miss(keys))
        if len(found) > 1:
            raise ValueError(f"table {self.name} has {len(found)} rows for {_asked(keys)}; ask by more columns")
        return found[0]

    def at_least(self, column: str, value: float, **keys: Key) -> Row:
        """Return the matching row with the smallest number in `column` that is not below `value`. Raises NoRow."""
        for number, row in _by_number(self, column, tuple(keys.items())):
            if number >= value:
                return row
        raise NoRow(self._miss({**keys, column: value}))

    def at_most(self, column: str, value: float, **keys: Key) -> Row:
        """Return the matching row with the largest number in `column` that is not above `value`. Raises NoRow."""
        rows = [(number, row) for number, row in _by_number(self, column, tuple(keys.items())) if number <= value]
        if not rows:
            raise NoRow(self._miss({**keys, column: value}))
        return max(rows, key=itemgetter(0))[1]

    def _miss(self, keys: Mapping[str, Key]) -> str:
        near = "; ".join(
            f"{_plain(column)}: {', '.join(_nearest(self.rows, column, key))}" for column, key in keys.items()
        )
        return f"table {self.cited} has no row for {_asked(keys)}; nearest present {near}"

    @property
    def cited(self) -> str:
        """Return the words by which a drawing cites the table."""
        return _cited(self.front)


@lru_cache(maxsize=8192)
def _matching(asked: Table, keys: tuple[tuple[str, Key], ...]) -> tuple[Row, ...]:
    """Return the rows that match; large systems ask for the same few rows over and over."""
    return tuple(row for row in asked.rows if all(_same(row[column], key) for column, key in keys))


@lru_cache(maxsize=1024)
def _by_number(asked: Table, column: str, keys: tuple[tuple[str, Key], ...]) -> tuple[tuple[float, Row], ...]:
    """Return the matching rows that have a number in a column, each with it, the least first."""
    rows = (row for row in asked.where(**dict(keys)) if row.has(column))
    return tuple(sorted(((row.number(column), row) for row in rows), key=itemgetter(0)))


@lru_cache(maxsize=4096)  # a large system cites the same few rows many thousand times
def _reference(title: str, keys: tuple[tuple[str, str], ...], below: str, mark: Mark | None) -> Citation:
    named = (in_words(key, text, below if text == _NO_END else "") for key, text in keys)
    return cited(sequence([of_cell(title), ": ", sequence(named)], ""), mark=mark)


def _cited(front: Mapping[str, str]) -> str:
    return front.get("short") or front["title"]


def _asked(keys: Mapping[str, Key]) -> str:
    return ", ".join(_said(column, str(key)) for column, key in keys.items())


def _said(column: str, text: str) -> str:
    try:
        return ENGLISH.say(in_words(column, text))
    except KeyError:
        return f"{_plain(column)} {text}"


def _plain(column: str) -> str:
    return column.replace("_", " ")


def _number(text: str) -> float | None:
    try:
        return float(text)
    except ValueError:
        return None


def _same(text: str, key: Key) -> bool:
    if isinstance(key, str):
        return text == key
    number = _number(text)
    return number is not None and number == key


def _nearest(rows: Sequence[Row], column: str, key: Key) -> list[str]:
    """Return the two numbers around the key, or every word of the column."""
    texts = list(dict.fromkeys(row[column] for row in rows if row[column]))
    wanted = _number(key) if isinstance(key, str) else float(key)
    numbers = sorted(number for text in texts if (number := _number(text)) is not None)
    if wanted is None or not numbers:
        return texts
    below = [number for number in numbers if number <= wanted][-1:]
    above = [number for number in numbers if number > wanted][:1]
    return [f"{number:g}" for number in below + above]


def parse_table(name: str, text: str) -> Table:
    """Read a table from the text of its file.

    Raises ValueError for a missing front-matter key, an unknown status, a row of the wrong length, or a row without a
    source.
    """
    lines = text.splitlines()
    body = next((index for index, line in enumerate(lines) if not line.startswith("#")), len(lines))
    front = {}
    for line in lines[:body]:
        key, colon, value = line.removeprefix("#").partition(":")
        if not colon:
            raise ValueError(f"table {name}: front matter line without a colon: {line}")
        front[key.strip()] = value.strip()
    missing = [key for key in _REQUIRED if not front.get(key)]
    if missing:
        raise ValueError(f"table {name}: front matter lacks {', '.join(missing)}")
    header, *records = csv.reader(line for line in lines[body:] if line.strip())
    columns = tuple(column.strip() for column in header)
    keys = tuple(key.strip() for key in front.get("keys", columns[0]).split(","))
    rows = [_row(name, front, columns, keys, record) for record in records]
    for number, (before, row) in enumerate(pairwise(rows), 1):
        if _NO_END in (row.cells[key] for key in keys):
            rows[number] = replace(row, below=next(before.cells[key] for key in keys if row.cells[key] == _NO_END))
    return Table(name, front, columns, tuple(rows))


def _row(
    name: str, front: Mapping[str, str], columns: tuple[str, ...], keys: tuple[str, ...], record: list[str]
) -> Row:
    if len(record) != len(columns):
        raise ValueError(f"table {name}: {len(record)} cells for {len(columns)} columns: {record}")
    cells = dict(zip(columns, (cell.strip() for cell in record), strict=True))
    absent = [key for key in keys if key not in cells]
    if absent:
        raise ValueError(f"table {name}: key column {', '.join(absent)} does not exist")
    source = cells.get("source") or front["source"]
    status = cells.get("status") or front["status"]
    if status not in _STATUSES:
        raise ValueError(f"table {name}: status must be one of {', '.join(_STATUSES)}, not {status}")
    seen = frozenset(cells.get("seen", "").split())
    if not seen <= set(columns):
        raise ValueError(f"table {name}: seen names no column: {', '.join(sorted(seen - set(columns)))}")
    return Row(name, _cited(front), cells, keys, source, status, seen=seen)


@lru_cache(maxsize=64)
def table(name: str) -> Table:
    """Return the table kept in `sld/tables/<name>.csv`. Raises NoRow, listing the tables, where there is none."""
    path = _FOLDER / f"{name}.csv"
    if not path.is_file():
        present = ", ".join(sorted(file.stem for file in _FOLDER.glob("*.csv")))
        raise NoRow(f"there is no table {name}; there are {present}")
    return parse_table(name, path.read_text(encoding="utf-8"))


def all_tables() -> list[Table]:
    """Return every table, by name."""
    return [table(path.stem) for path in sorted(_FOLDER.glob("*.csv"))]


@lru_cache(maxsize=64)
def series(name: str) -> tuple[float, ...]:
    """Return a series of standard ratings, rising, in the unit its name ends in. Raises NoRow."""
    return tuple(float(text) for text in table("standard_ratings").pick(series=name)["values"].split(";"))


def next_at_least(values: Sequence[float], value: float) -> float | None:
    """Return the smallest of `values` that is not below `value` (tolerance 0), or None where all are below."""
    return min((candidate for candidate in values if candidate >= value), default=None)
