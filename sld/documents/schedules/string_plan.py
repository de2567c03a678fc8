"""Each string for itself: on which input, with which modules. Nothing is to scale and no place on a roof is claimed."""

from __future__ import annotations

from collections.abc import Iterator

from sld.documents.cell import Cell, computed, designated, given
from sld.documents.section import Column, Table
from sld.model.device import InputTerminal, InverterUnit, StringGroup
from sld.model.places import facing, place_words
from sld.model.system import System
from sld.words import phrase, sequence

__all__ = ["string_plan"]

_COLUMNS = (
    Column(phrase("Inverter")),
    Column(phrase("Input")),
    Column(phrase("String")),
    Column(phrase("Modules in series"), right=True),
    Column(phrase("Module"), 1.0),
    Column(phrase("Orientation, place"), 1.0),
)


def string_plan(system: System) -> Table:
    """Return a row for each string, inverter by inverter, in the order of its inputs."""
    rows = (
        row
        for unit in system.of(InverterUnit)
        for terminal in system.downstream(unit.key)
        if isinstance(terminal, InputTerminal)
        for row in _strings(system, unit, terminal)
    )
    return Table("string_plan", phrase("Strings by inverter and input"), _COLUMNS, tuple(rows))


def _strings(system: System, unit: InverterUnit, terminal: InputTerminal) -> Iterator[tuple[Cell, ...]]:
    for group in system.downstream(terminal.key):
        if isinstance(group, StringGroup):
            said = group.given
            place = place_words(system.site.locations, group.location)
            for name in group.designations:
                yield (
                    designated(unit.designation),
                    designated(terminal.designation),
                    designated(name),
                    computed(phrase("1 to {count}", count=said.modules_in_series)),
                    given(group.product or group.type_name),
                    given(sequence((facing(said), place, group.name, group.note))),
                )
