"""Terminals, tightening torques, stripping lengths and routes, as far as the spec gives them: for those who wire."""

from __future__ import annotations

from collections.abc import Iterator

from sld.documents.alike import alike_as_one
from sld.documents.cell import NOT_GIVEN, designated, given
from sld.documents.section import Column, Table
from sld.model.device import Apparatus, BatteryUnit, Busbar, Cable, Consumer, DataNode, GeneratorUnit, InverterUnit
from sld.model.system import System
from sld.model.wording import device_word
from sld.spec.blocks.block import Wired
from sld.words import Phrase, amount, phrase, sequence

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
    """Return a row for each thing of which the spec gives terminals, torque, stripping length or route."""
    rows = []
    for designation, word, said, route, largest_mm2 in _wired(system):
        most = phrase("at most {section}", section=amount(largest_mm2, "mm²")) if largest_mm2 is not None else ""
        words = [each for each in (said.terminals, most) if each]
        cells = (
            given(sequence(words, "; ")) if words else given(""),
            given(amount(said.torque_nm, "Nm")) if said.torque_nm is not None else NOT_GIVEN,
            given(amount(said.strip_length_mm, "mm")) if said.strip_length_mm is not None else NOT_GIVEN,
            given(route),
        )
        if any(cell != NOT_GIVEN for cell in cells):
            rows.append((designated(designation), given(word), *cells))
    return Table("terminals", phrase("Terminals and routes"), _COLUMNS, alike_as_one(rows), sparse=True)


def _wired(system: System) -> Iterator[tuple[str, Phrase, Wired, str, float | None]]:
    """Yield designation, word, what the spec says, the route and the largest section of all that has terminals or is
    laid."""
    for device in system.devices.values():
        if isinstance(device, _Wired):
            route = device.given.route if isinstance(device, Cable) else None
            of_type_mm2 = device.type.terminal_section_max_mm2 if isinstance(device, InverterUnit) else None
            largest_mm2 = device.given.terminal_section_max_mm2 or of_type_mm2
            yield device.designation, device_word(device), device.given, route or "", largest_mm2
    for designation, box in system.boxes.values():
        yield designation, phrase("junction box"), box, "", box.terminal_section_max_mm2
    earthing = system.earthing
    word = phrase("main earthing terminal")
    yield system.earthing_designation, word, earthing, "", earthing.terminal_section_max_mm2
