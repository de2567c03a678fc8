"""Which class draws which symbol: the one place where a symbol gets its name, its legend wording and its source."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, TypeVar

if TYPE_CHECKING:
    from sld.symbols.element import Graphic

__all__ = ["FAMILIES", "Entry", "entries", "graphic"]

FAMILIES = ("IEC", "ANSI")
"""Symbol families. IEC: IEC 60617. ANSI: IEEE 315, for which no symbol is entered yet."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One name of the catalogue. draw: makes the element; stretches: it takes `feeds_m`, the rows it spans."""

    name: str
    title: str
    source: str
    hangs: bool
    stretches: bool
    draw: Callable[..., Graphic]
    variant: tuple[tuple[str, Any], ...]


_ENTRIES: dict[tuple[str, str], Entry] = {}

G = TypeVar("G", bound="type[Graphic]")


def graphic(
    name: str, title: str, source: str, *,
    family: str = "IEC", hangs: bool = False, stretches: bool = False, **variant: Any,
) -> Callable[[G], G]:  # fmt: skip
    """Enter a symbol: decorates the class that draws it, once for each `variant` of its keyword arguments.

    Raises ValueError where the name is already taken in the family or the family is unknown.
    """
    if family not in FAMILIES:
        raise ValueError(f"unknown symbol family {family!r}; there are {', '.join(FAMILIES)}")
    if (family, name) in _ENTRIES:
        raise ValueError(f"symbol {name!r} is entered twice in family {family}")

    def enter(drawn: G) -> G:
        _ENTRIES[family, name] = Entry(name, title, source, hangs, stretches, drawn, tuple(variant.items()))
        return drawn

    return enter


def entries(family: str) -> dict[str, Entry]:
    """Return the symbols of one family by name, in the order of their names."""
    return {name: entry for (of, name), entry in sorted(_ENTRIES.items()) if of == family}
