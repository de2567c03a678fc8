"""Cells written by hand: each line a text, the first one above a symbol the designation."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from sld.layout.diagram.diagram import Cell
from sld.layout.diagram.line import Line, Role
from sld.words import verbatim

__all__ = ["above", "below", "drawn", "texts"]


def above(*texts: str) -> tuple[Line, ...]:
    return tuple(Line(Role.NAME if place else Role.DESIGNATION, verbatim(text)) for place, text in enumerate(texts))


def below(*texts: str) -> tuple[Line, ...]:
    return tuple(Line(Role.RATED, verbatim(text)) for text in texts)


def drawn(
    key: str, symbol: str, upper: Sequence[str] = (), lower: Sequence[str] = (), earth: str = "", **fields: Any
) -> Cell:
    conductor = Line(Role.DESIGNATION, verbatim(earth)) if earth else None
    return Cell(key, symbol, above(*upper), below(*lower), earth=conductor, **fields)


def texts(lines: Sequence[Line]) -> tuple[str, ...]:
    return tuple(str(line.said) for line in lines)
