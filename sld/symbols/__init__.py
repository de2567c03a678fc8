"""Graphical symbols: a library of its own, whose symbols anyone can place in a schemdraw drawing.

>>> from sld.symbols import CircuitBreaker, Fuse, drawing
>>> plan = drawing()
>>> for element in (Fuse(), CircuitBreaker(family="ANSI")):
...     _ = plan.add(element)
>>> sorted(CircuitBreaker().anchors)
['feed', 'supply']

Each name of the catalogue is a callable here, `circuit_breaker` as `CircuitBreaker`; `as_element` takes the name.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sld.symbols.element import Graphic

__all__ = ["as_element", "drawing", "element_names"]

_HOMES = ("drawing", "as_element", "element_names")


def __getattr__(name: str) -> Callable[..., Graphic]:
    """Return what makes a symbol by its name (PEP 562). Raises AttributeError for a name that is not there."""
    if name.startswith("_") or not (name in _HOMES or name[0].isupper()):
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from sld.symbols import placing

    if name in _HOMES:
        found: Callable[..., Graphic] = getattr(placing, name)
        return found
    of = placing.element_names().get(name)
    if of is None:
        near = placing.nearest(name)
        raise AttributeError(f"there is no symbol {name}{f'; did you mean {near}?' if near else ''}")
    return partial(placing.as_element, of)
