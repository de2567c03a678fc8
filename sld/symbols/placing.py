"""Symbols as elements of a drawing by schemdraw, one module (2.5 mm) to its unit."""

from __future__ import annotations

from difflib import get_close_matches
from functools import lru_cache
from typing import Any

import schemdraw

from sld.symbols.catalogue import element_of, names
from sld.symbols.element import Graphic
from sld.symbols.stroke import MODULE_MM

__all__ = ["as_element", "drawing", "element_names", "nearest"]

_MM_PER_INCH = 25.4


def drawing(**options: Any) -> schemdraw.Drawing:
    """Return an empty drawing in which symbols have their true size. options: as of `schemdraw.Drawing`."""
    return schemdraw.Drawing(**{"inches_per_unit": MODULE_MM / _MM_PER_INCH, "unit": 4, "show": False} | options)


def as_element(name: str, family: str = "IEC", **placement: Any) -> Graphic:
    """Return a symbol as a schemdraw element, its pins as anchors; the next one begins at its pin `supply`.

    name: as in the catalogue, `circuit_breaker`. family: `IEC` or `ANSI`. placement: as of any element of schemdraw.
    Raises KeyError, with the nearest names, for one that is not there.
    """
    made = element_of(name, family, **placement)
    made.elmparams["drop"] = made.anchors.get("supply", made.anchors.get("feed", (0.0, 0.0)))
    return made


@lru_cache(maxsize=1)
def element_names() -> dict[str, str]:
    """Return the names of the catalogue by those of the elements: `CircuitBreaker` -> `circuit_breaker`."""
    return {"".join(part.capitalize() for part in name.split("_")): name for name in names()}


def nearest(name: str) -> str:
    """Return the name of an element that was probably meant, or nothing."""
    return next(iter(get_close_matches(name, element_names(), 1, 0.6)), "")
