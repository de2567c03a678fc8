"""Which class draws which symbol: the one place where a symbol gets its name, its legend wording and its source."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any, TypeVar

from sld.frozen import dataclass, replace
from sld.words import Phrase

if TYPE_CHECKING:
    from sld.symbols.element import Graphic

__all__ = ["BUILT_UP", "FAMILIES", "Entry", "entries", "graphic"]

FAMILIES = {"IEC": "IEC 60617", "ANSI": "IEEE 315-1975 (ANSI Y32.2)"}
"""Symbol families and the standard that each follows. Every name is in both, with the same terminals."""

BUILT_UP = "built up from parts, as IEEE 315 A3.1 allows"
"""Source in the ANSI family of what IEEE 315-1975 has no symbol for; A3.1 is titled "Generation of Symbols Not Shown
(Buildups)" in the table of contents that its sellers publish (asmedoc.com, seen 2026)."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One name of one family. draw: makes the element; stretches: it takes `feeds_m`, the rows it spans.

    shared: both families draw it alike. ansi: its title and source in the ANSI family where that differs.
    """

    name: str
    title: Phrase
    source: str
    hangs: bool
    stretches: bool
    draw: Callable[..., Graphic]
    variant: tuple[tuple[str, Any], ...]
    ansi: tuple[Phrase, str]
    shared: bool = False


_ENTRIES: dict[tuple[str, str], Entry] = {}

G = TypeVar("G", bound="type[Graphic]")


def graphic(
    name: str, title: Phrase, source: str, *,
    family: str = "IEC", ansi: str = "", ansi_title: Phrase | None = None, hangs: bool = False, stretches: bool = False,
    **variant: Any,
) -> Callable[[G], G]:  # fmt: skip
    """Enter a symbol: decorates the class that draws it, once for each `variant` of its keyword arguments.

    A name that the ANSI family does not draw itself is shared by both. ansi: the source of a shared one in IEEE 315,
    ansi_title: its legend wording there; left out, those of the IEC family hold.
    Raises ValueError where the name is already taken in the family or the family is unknown.
    """
    if family not in FAMILIES:
        raise ValueError(f"unknown symbol family {family!r}; there are {', '.join(FAMILIES)}")
    if (family, name) in _ENTRIES:
        raise ValueError(f"symbol {name!r} is entered twice in family {family}")
    told = (ansi_title or title, ansi or source)

    def enter(drawn: G) -> G:
        _ENTRIES[family, name] = Entry(name, title, source, hangs, stretches, drawn, tuple(variant.items()), told)
        return drawn

    return enter


def entries(family: str) -> dict[str, Entry]:
    """Return the symbols of one family by name, in the order of their names: its own, and those that are shared."""
    by_family = {
        each: {name: entry for (of, name), entry in sorted(_ENTRIES.items()) if of == each} for each in FAMILIES
    }
    own = by_family["ANSI"]
    if family == "IEC":
        return {name: replace(entry, shared=name not in own) for name, entry in by_family["IEC"].items()}
    shared = {
        name: replace(entry, title=entry.ansi[0], source=entry.ansi[1], shared=True)
        for name, entry in by_family["IEC"].items()
    }
    return {name: own.get(name, entry) for name, entry in shared.items()}
