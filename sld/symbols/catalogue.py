"""The catalogue of graphical symbols: strokes, extents and named terminals of each, in millimetres, y down.

The origin of a symbol is its left terminal `feed` (towards the strings); `supply` (towards the public network) lies to
its right on the same axis. Symbols that hang from one conductor have `feed` only. All pins lie on the 2.5 mm grid. A
symbol that ends a row (PV string, battery, load, network) has both pins all the same: the one that nothing is wired to
marks its outer edge.
"""

from __future__ import annotations

import difflib
from functools import lru_cache
from importlib import import_module
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from sld.frozen import dataclass, replace
from sld.symbols import turning
from sld.symbols.extents import extents
from sld.symbols.registry import FAMILIES, Entry, entries
from sld.symbols.stroke import MODULE_MM, Box, Point, Stroke
from sld.words import Phrase

if TYPE_CHECKING:
    from sld.symbols.element import Graphic

__all__ = ["Family", "Symbol", "element_of", "family", "names", "stretched", "symbol", "turned"]

_DRAWINGS = (
    "boundary", "changeover", "continuation", "converters", "data", "earthing", "metering", "protection", "sources",
    "switching", "wiring",
    "ansi.data", "ansi.earthing", "ansi.metering", "ansi.protection", "ansi.sources", "ansi.switching",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Symbol:
    """One graphical symbol.

    title: its wording in the legend. strokes: millimetres about the origin, y down. box: extents of centre lines,
    texts with their measured box. pins: terminals by name. source: where the geometry's meaning comes from. hangs: the
    body hangs below the wire, as that of a surge protective device does, instead of standing on both sides of it.
    strip: extents of what spans the rows of the feeds, None where nothing does; core: of what stands about the axis.
    shared: both families draw it alike.
    """

    name: str
    title: Phrase
    strokes: tuple[Stroke, ...]
    box: Box
    pins: tuple[tuple[str, Point], ...]
    source: str
    hangs: bool
    shared: bool
    strip: Box | None = None
    core: Box | None = None


@dataclass(frozen=True, slots=True)
class Family:
    """The symbols of one family. standard: the one that they follow."""

    name: str
    standard: str

    def symbol(self, name: str) -> Symbol:
        """Return a symbol of the family by name. Raises KeyError for a name that is not there."""
        return symbol(name, self.name)

    def stretched(self, name: str, feeds_mm: tuple[float, ...]) -> Symbol:
        """Return a symbol of the family over several rows, feeds in millimetres. Raises as `stretched` below does."""
        return stretched(name, feeds_mm, self.name)

    def turned(self, name: str) -> Symbol:
        """Return a symbol of the family that leads down. Raises KeyError for a name that is not there."""
        return turned(name, self.name)


def family(name: str) -> Family:
    """Return the family `IEC` or `ANSI`. Raises KeyError for another."""
    if name not in FAMILIES:
        raise KeyError(f"no symbol family {name!r}; there are {', '.join(FAMILIES)}")
    return Family(name, FAMILIES[name])


def names() -> tuple[str, ...]:
    """Return the names of all symbols, in alphabetical order; every family has all of them."""
    return tuple(_entries("IEC"))


@lru_cache(maxsize=512)
def symbol(name: str, family: str = "IEC") -> Symbol:
    """Return a symbol by name. A symbol that can span rows comes with one, `feed`, on its axis.

    Raises KeyError for a name or a family that is not there, and tells the nearest names.
    """
    return _drawn(_entry(name, family))


@lru_cache(maxsize=512)
def stretched(name: str, feeds_mm: tuple[float, ...], family: str = "IEC") -> Symbol:
    """Return a symbol stretched over several rows.

    feeds_mm: where the pins `feed1`, `feed2`, ... lie below (+) or above (-) the axis of the pin `supply`, in
    millimetres, ascending, whole multiples of 2.5 mm.
    Raises KeyError as `symbol` does; ValueError where the symbol cannot span rows or the feeds are not as said.
    """
    entry = _entry(name, family)
    if not entry.stretches:
        raise ValueError(f"symbol {name!r} spans one row only")
    if not feeds_mm or any(b <= a for a, b in pairwise(feeds_mm)):
        raise ValueError(f"feeds of {name!r} must be one or more, ascending: {feeds_mm}")
    if any(abs(y / MODULE_MM - round(y / MODULE_MM)) > 1e-6 for y in feeds_mm):
        raise ValueError(f"feeds of {name!r} must lie on whole multiples of {MODULE_MM} mm: {feeds_mm}")
    return _drawn(entry, feeds_m=tuple(-float(round(y / MODULE_MM)) for y in feeds_mm))


@lru_cache(maxsize=512)
def turned(name: str, family: str = "IEC") -> Symbol:
    """Return a symbol that leads down instead of to the right: of a bar with one feed, which has no length, both pins
    are at its origin. What hung below the conductor is on its left. Raises KeyError as `symbol` does.
    """
    lying = symbol(name, family)
    strokes = turning.turned(lying.strokes)
    pins = tuple((pin, turning.turned_point(at)) for pin, at in lying.pins)
    return replace(lying, strokes=strokes, box=extents(strokes), pins=pins, strip=None, core=None)


def element_of(name: str, family: str = "IEC", **placement: Any) -> Graphic:
    """Return a symbol as an element of a schemdraw drawing. Raises KeyError as `symbol` does."""
    entry = _entry(name, family)
    return entry.draw(**dict(entry.variant), **placement)


def _drawn(entry: Entry, **span: Any) -> Symbol:
    """Have the element drawn and turn it into strokes."""
    from sld.symbols.conversion import page_point, stroke_of  # brings schemdraw, which only drawing needs

    element = entry.draw(**dict(entry.variant), **span)
    strokes = tuple(stroke_of(segment) for segment in element.segments)
    pins = tuple((name, page_point(at)) for name, at in element.anchors.items())
    strip, core = (
        extents(part) if part else None for part in (strokes[: element.strip_count], strokes[element.strip_count :])
    )
    return Symbol(
        entry.name, entry.title, strokes, extents(strokes), pins, entry.source, entry.hangs, entry.shared, strip, core
    )


def _entry(name: str, family: str) -> Entry:
    known = _entries(family)
    if name not in known:
        near = difflib.get_close_matches(name, known, n=3, cutoff=0.5)
        hint = f"; nearest: {', '.join(near)}" if near else ""
        raise KeyError(f"no symbol {name!r} in family {family}{hint}")
    return known[name]


@lru_cache(maxsize=len(FAMILIES))
def _entries(family: str) -> dict[str, Entry]:
    """Return the entries of a family after every module of drawings has entered its own."""
    if family not in FAMILIES:
        raise KeyError(f"no symbol family {family!r}; there are {', '.join(FAMILIES)}")
    for module in _DRAWINGS:
        import_module(f"sld.symbols.{module}")
    return entries(family)
