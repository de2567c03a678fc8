"""Reads the sheets of one diagram back as a whole: what the marks say of each other, followed as a reader would.

A mark is paired by what is printed at it, `/3.B4`, with the mark that stands in field B4 of sheet 3 and names the field
of the first one. Where several do, the words tell: `to -TB7-WD1` leads to where `-TB7-WD1` is, which comes `from` what
the first mark is at.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from plan_reader import Terminal, read_nets, through_boundaries

from sld.layout.plan import PlacedCell, Plan

LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"


@dataclass(frozen=True)
class Page:
    """A sheet: its number and size, and the plan in its coordinates."""

    number: int
    width_mm: float
    height_mm: float
    plan: Plan


@dataclass(frozen=True)
class Mark:
    """here and there: (sheet, field). beside: the designations of what it is connected with."""

    terminal: Terminal
    here: tuple[int, str]
    there: tuple[int, str]
    words: str
    beside: frozenset[str]
    net: frozenset[Terminal]


def field(page: Page, x_mm: float, y_mm: float) -> str:
    """ISO 5457: an even number of fields of 50 mm counted from the middle, the outer ones take the rest; no I, no O."""

    def number(at_mm: float, length_mm: float) -> int:
        half = max(1, int(length_mm / 100 + 0.5))
        steps = [length_mm / 2 + 50 * k for k in range(1 - half, half)]
        return sum(at_mm >= step for step in steps)

    row = number(y_mm, page.height_mm)
    letter = LETTERS[row] if row < len(LETTERS) else LETTERS[row // 24 - 1] + LETTERS[row % 24]
    return f"{letter}{number(x_mm, page.width_mm) + 1}"


def references(cell: PlacedCell) -> list[tuple[int, str]]:
    """What is printed at a cell, in the order of the lines."""
    words = " ".join(label.text for label in cell.labels)
    return [(int(sheet), zone) for sheet, zone in re.findall(r"(?<!\S)/(\d+)\.([A-Z]+\d+)", words)]


def place(page: Page, cell: PlacedCell) -> tuple[int, str]:
    """A symbol is where its left terminal is."""
    return page.number, field(page, *cell.at)


def marks(page: Page, nets: set[frozenset[Terminal]]) -> list[Mark]:
    cells = {cell.key: cell for cell in page.plan.cells}
    boards = {frame.key: frame.caption.text.split()[0].rstrip(":,") for frame in page.plan.frames}
    found = []
    for cell in page.plan.cells:
        if not cell.symbol.startswith("continued_"):
            continue
        (there,) = references(cell)
        (net,) = [net for net in nets if any(key == cell.key for key, _ in net)]
        (terminal,) = [(key, name) for key, name in net if key == cell.key]
        beside = frozenset(label.text for key, _ in net if key != cell.key for label in cells[key].labels)
        beside |= {label.split()[0] for label in beside if label}  # more may stand behind a designation
        beside |= {boards[key] for key, _ in net if key in boards}  # a bar is named by the frame around it
        words = " ".join(re.sub(r"(?<!\S)/\d+\.\S+", "", label.text).strip() for label in cell.labels).strip()
        found.append(Mark(terminal, place(page, cell), there, words, beside, net))
    return found


def _leads(mark: Mark, other: Mark) -> bool:
    """Whether the words at one mark name what the other one is at, and both the same chain where they name one."""
    chains = [re.match(r"(-\S+) (?:to|from) ", each.words) for each in (mark, other)]
    if all(chains) and len({chain[1] for chain in chains if chain}) > 1:
        return False
    said = re.search(r"(?:^|\s)(?:to|from) (.+)$", mark.words)
    if said:
        short = said[1][said[1].find("-", 1) :]  # it begins behind the inverter of its row where labels are terse
        if short in other.beside:
            return True
        return said[1] in " ".join(sorted(other.beside)) or any(said[1].startswith(name) for name in other.beside)
    return mark.words.split()[0] == other.words.split()[0]  # a busbar that goes on has one name


def pairs(found: Sequence[Mark]) -> list[tuple[Mark, Mark]]:
    """Each mark with its other end; an error where there is none, or more than one."""
    by_place: dict[tuple[int, str], list[Mark]] = {}
    for mark in found:
        by_place.setdefault(mark.here, []).append(mark)
    made = []
    for mark in found:
        others = [
            other
            for other in by_place.get(mark.there, [])
            if other.there == mark.here and _opposite(mark, other) and _leads(mark, other) and _leads(other, mark)
        ]
        assert len(others) == 1, f"{mark} leads to {others}"
        if mark.terminal[1] == "supply" or (mark.terminal[1] == "data" and mark.terminal[0].endswith("/from")):
            made.append((mark, others[0]))
    assert len(made) * 2 == len(found)
    return made


def _opposite(mark: Mark, other: Mark) -> bool:
    ends = {mark.terminal[1], other.terminal[1]}
    words = {re.sub(r"^.*/(to|from)(-\d+)?$", r"\1", each.terminal[0]) for each in (mark, other)}
    return ends in ({"supply", "feed"}, {"data"}) and words == {"to", "from"}


def _whole(terminal: Terminal) -> Terminal:
    """The part of a busbar behind N ways is the busbar: its first way is way N + 1."""
    key, name = terminal
    base, found, before = key.partition("/continued-")
    if not found or not re.fullmatch(r"feed\d+", name):
        return (base, name)
    return (base, f"feed{int(name.removeprefix('feed')) + int(before)}")


def read_sheets(pages: Sequence[Page]) -> set[frozenset[Terminal]]:
    """The nets of the whole diagram."""
    nets: list[frozenset[Terminal]] = []
    every: list[Mark] = []
    for page in pages:
        read = read_nets(page.plan)
        nets += read
        every += marks(page, read)
    parts: dict[Terminal, frozenset[Terminal]] = {terminal: net for net in nets for terminal in net}
    for one, other in pairs(every):
        joined = (parts[one.terminal] | parts[other.terminal]) - {one.terminal, other.terminal}
        for terminal in joined:
            parts[terminal] = joined
        for mark in (one, other):
            del parts[mark.terminal]
    whole = {frozenset(map(_whole, net)) for net in parts.values()}
    whole = through_boundaries(whole)
    return {net for net in whole if len({key for key, _ in net}) > 1}  # not a busbar with its own other part


def check_earth_references(pages: Sequence[Page], bar: str) -> None:
    """A conductor to earth names the field of its terminal; the terminal that of the first and the last of them."""
    taps: dict[str, tuple[tuple[int, str], list[tuple[int, str]]]] = {}
    for page in pages:
        for cell in page.plan.cells:
            if cell.key.startswith(f"{bar}/"):
                taps[cell.key.removeprefix(f"{bar}/")] = (place(page, cell), references(cell))
    drops: dict[str, list[tuple[int, str]]] = {}
    for page in pages:
        for cell in page.plan.cells:
            name = cell.labels[0].text.split()[0] if cell.labels else ""
            if not cell.key.endswith("/earth") or name not in taps:
                continue
            home = taps[name][0]
            assert references(cell) == ([home] if home[0] != page.number else [])
            if home[0] != page.number:
                drops.setdefault(name, []).append(place(page, cell))
    for name, (_, named) in taps.items():
        there = drops.get(name, [])
        assert set(named) <= set(there)
        assert len(named) == min(len(there), 2)
        assert [sheet for sheet, _ in named] == [sheet for sheet, _ in (there[:1] + there[-1:])[: len(named)]]


def on_data(nets: set[frozenset[Terminal]]) -> list[frozenset[str]]:
    """The devices on each data cable."""
    found = [frozenset(key for key, name in net if name.startswith("data")) for net in nets]
    return sorted((keys for keys in found if len(keys) > 1), key=sorted)
