"""Terminals, tightening torques, stripping lengths and routes, as far as the spec gives them: for those who wire."""

from __future__ import annotations

from sld.documents.alike import Repeated, Row, alike_as_one, of_all
from sld.documents.cell import NOT_GIVEN, designated, given
from sld.documents.section import Column, Table
from sld.model.device import (
    Apparatus,
    BatteryUnit,
    Busbar,
    Cable,
    Consumer,
    DataNode,
    Device,
    GeneratorUnit,
    InverterUnit,
)
from sld.model.system import System
from sld.model.wording import device_word
from sld.spec.blocks.block import Wired
from sld.words import amount, phrase, sequence

__all__ = ["wiring"]

_COLUMNS = (
    Column(phrase("Designation")),
    Column(phrase("Device"), 0.8),
    Column(phrase("Terminals"), 1.4),
    Column(phrase("Torque"), right=True),
    Column(phrase("Strip"), right=True),
    Column(phrase("Route"), 1.2),
)

_Wired = Apparatus | Cable | InverterUnit | Busbar | Consumer | BatteryUnit | GeneratorUnit | DataNode


def wiring(system: System) -> Table:
    """Return a row for each thing of which the spec gives terminals, torque, stripping length or route.

    The largest section that the type of an inverter states makes no row: it is among the ratings of the equipment.
    """
    rows: list[Row | Repeated] = []
    for device in system.one_of_each().of(Device):
        if isinstance(device, _Wired):
            route = device.given.route if isinstance(device, Cable) else None
            of_type_mm2 = device.type.terminal_section_max_mm2 if isinstance(device, InverterUnit) else None
            largest_mm2 = device.given.terminal_section_max_mm2 or of_type_mm2
            if cells := _cells(device.given, largest_mm2, route or ""):
                rows += of_all(system, device, (designated(device.designation), given(device_word(device)), *cells))
    for name, box in system.boxes.values():
        if cells := _cells(box, box.terminal_section_max_mm2):
            rows.append((designated(name), given(phrase("junction box")), *cells))
    if cells := _cells(system.earthing, system.earthing.terminal_section_max_mm2):
        rows.append((designated(system.earthing_designation), given(phrase("main earthing terminal")), *cells))
    return Table("terminals", phrase("Terminals and routes"), _COLUMNS, alike_as_one(rows), sparse=True)


def _cells(said: Wired, largest_mm2: float | None, route: str = "") -> Row:
    """Return the cells of terminals, torque, stripping length and route; none where nothing of it is given."""
    own_mm2 = said.terminal_section_max_mm2
    if not (said.terminals or route) and own_mm2 is said.torque_nm is said.strip_length_mm is None:
        return ()
    most = phrase("at most {section}", section=amount(largest_mm2, "mm²")) if largest_mm2 is not None else ""
    words = [each for each in (said.terminals, most) if each]
    return (
        given(sequence(words, "; ")) if words else given(""),
        given(amount(said.torque_nm, "Nm")) if said.torque_nm is not None else NOT_GIVEN,
        given(amount(said.strip_length_mm, "mm")) if said.strip_length_mm is not None else NOT_GIVEN,
        given(route),
    )
