"""The lines below the symbols of what each string has: diodes, branch connectors, power optimisers."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from sld.layout.diagram.line import Line, Role, line, rated
from sld.model.device import Apparatus
from sld.model.kinds.dc import BLOCKING_DIODE, BRANCH_CONNECTOR, OPTIMISER
from sld.model.kinds.row import Kind
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.spec.blocks.circuit import BlockingDiode
from sld.spec.blocks.dc_path import BranchConnector
from sld.spec.blocks.optimiser import Optimiser
from sld.steps import Ratings
from sld.words import NOTHING, amount, phrase, sequence

__all__ = ["OF_STRINGS", "stated_or_least"]


def stated_or_least(device: Apparatus, ratings: Ratings, symbol: Symbol, least: Symbol) -> Line | None:
    """Return a rated value as given, else the least that it may be, of devices for which nothing is chosen."""
    stated = rated(ratings.get(device.key, symbol))
    return stated or rated(ratings.get(device.key, least), str(symbol), "≥")


def _diode(given: BlockingDiode, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    return [
        line(Role.RATED, amount(given.rated_voltage_v, "V") if given.rated_voltage_v else None),
        line(Role.RATED, amount(given.rated_current_a, "A") if given.rated_current_a else None),
    ]


def _branch(given: BranchConnector, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    return [
        line(Role.RATED, phrase("{count} × {strings} in 1", count=device.count, strings=given.strings)),
        stated_or_least(device, ratings, Symbol.UN, Symbol.UN_MIN),
        stated_or_least(device, ratings, Symbol.IN, Symbol.IN_MIN),
    ]


def _optimiser(given: Optimiser, device: Apparatus, system: System, ratings: Ratings) -> list[Line | None]:
    stated = ((given.string_voltage_v, "V"), (given.output_current_max_a, "A"))
    held = [amount(value, unit) for value, unit in stated if value]
    return [
        line(Role.RATED, sequence([amount(device.count, "×"), device.product or NOTHING], " ")),
        line(Role.RATED, sequence(held) if held else None),
        line(Role.SETTING, phrase("shuts the string down") if given.rapid_shutdown else None),
    ]


OF_STRINGS: dict[Kind[Any], Callable[[Any, Apparatus, System, Ratings], list[Line | None]]] = {
    BLOCKING_DIODE: _diode,
    BRANCH_CONNECTOR: _branch,
    OPTIMISER: _optimiser,
}
"""What writes the lines of a kind."""
