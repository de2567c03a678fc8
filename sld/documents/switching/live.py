"""What stays live, every source with what isolates it, and the order of switching on as far as a maker states it."""

from __future__ import annotations

from collections.abc import Sequence

from sld.documents.cell import FILL_IN, NOT_GIVEN, Cell, State, computed, designated, given, of_rating
from sld.documents.section import Column, Paragraphs, Table
from sld.documents.switching.ways import ac_side, at_boxes, at_source, main_switches, sources
from sld.layout.diagram.ranges import joined
from sld.model.device import BatteryUnit, Device, InverterUnit, StringGroup
from sld.model.places import place_of, place_words
from sld.model.system import System
from sld.model.wording import STATUSES, device_word
from sld.ratings.symbol import Symbol
from sld.steps import Ratings
from sld.words import Sayable, amount, phrase, verbatim

__all__ = ["cautions", "restoring", "source_list", "stays_live"]


def cautions(system: System) -> Paragraphs:
    """Return what holds for all steps (common practice, no source)."""
    count = len(sources(system)) + 1
    texts = [
        phrase(
            "There are {count} sources with the network; each has to be isolated. Conductors of the array are live in "
            "daylight, whatever is switched, and inverters hold a charge.",
            count=count,
        ),
        phrase(
            "Connectors and fuse holders are not opened under load. What is proved dead is only the place that is "
            "tested; a fault may have a conductor live that should be dead."
        ),
    ]
    return Paragraphs("switching_cautions", phrase("Before anything is switched"), tuple(texts), numbered=True)


def source_list(system: System) -> Table:
    """Return every source with the devices that part it from the installation."""
    columns = (
        Column(phrase("Source")),
        Column(phrase("Device"), 0.8),
        Column(phrase("Place"), 0.8),
        Column(phrase("AC side opened by"), 1.0),
        Column(phrase("DC side opened by"), 1.0),
        Column(phrase("Status")),
    )
    network = system.devices[system.root]
    rows = [
        (
            designated(network.designation),
            given(phrase("network")),
            given(system.project.address or ""),
            _joined(main_switches(system)),
            computed(phrase("none")),
            given(STATUSES[network.status]),
        )
    ]
    for each in sources(system):
        rows.append(
            (
                designated(each.designation),
                given(device_word(each)),
                given(place_words(system.site.locations, place_of(system, each))),
                _joined(ac_side(system, each)),
                _joined([*at_source(system, each), *at_boxes(system, each)]),
                given(STATUSES[each.status]),
            )
        )
    return Table("source_list", phrase("Sources"), columns, tuple(rows))


def _joined(devices: Sequence[Device]) -> Cell:
    if not devices:
        return NOT_GIVEN
    said = verbatim(joined(each.designation for each in devices))
    if any(each.assumed for each in devices):
        return Cell(said, State.ASSUMED, why=phrase("not mentioned in the spec"))
    return given(said)


def stays_live(system: System, ratings: Ratings) -> Table:
    """Return what stays live when all is open, up to which device, at which voltage."""
    columns = (
        Column(phrase("What stays live"), 1.2),
        Column(phrase("Designation"), 1.0),
        Column(phrase("Up to"), 1.0),
        Column(phrase("Voltage"), 0.8),
    )
    voltage: Sayable = amount(system.voltage_v, "V")
    switches = _joined(main_switches(system))
    root = designated(system.devices[system.root].designation)
    rows: list[tuple[Cell, ...]] = [
        (given(phrase("the side of the network")), root, switches, computed(voltage)),
    ]
    for unit in sources(system):
        if isinstance(unit, InverterUnit):
            groups = [each for each in system.of(StringGroup) if each.owner == unit.key]
            names = given(verbatim(joined(name for group in groups for name in group.designations)))
            opened = [
                each for each in (*at_boxes(system, unit), *at_source(system, unit)) if each is unit or each.in_array
            ]
            if groups:
                highest = _highest(ratings, groups)
                rows.append((given(phrase("strings and their cables, in daylight")), names, _joined(opened), highest))
            if unit.type.backup is not None:
                output = designated(unit.designation)
                said = given(phrase("the backup output, until the inverter is off"))
                rows.append((said, output, NOT_GIVEN, NOT_GIVEN))
        elif isinstance(unit, BatteryUnit):
            most_v = unit.given.voltage_max_v
            cell = given(amount(most_v, "V")) if most_v is not None else NOT_GIVEN
            cells = designated(unit.designation)
            rows.append(
                (
                    given(phrase("cells of the battery")),
                    cells,
                    _joined([*at_source(system, unit), *at_boxes(system, unit)]),
                    cell,
                )
            )
    return Table("stays_live", phrase("What stays live"), columns, tuple(rows))


def _highest(ratings: Ratings, groups: list[StringGroup]) -> Cell:
    found = [rating for group in groups if (rating := ratings.get(group.key, Symbol.UOC_MAX)) is not None]
    return of_rating(max(found, key=lambda rating: rating.value, default=None))


def restoring(system: System) -> Table:
    """Return the steps of switching on as the maker of each inverter states them, else lines to write them on.

    Published orders contradict each other (reverse order in opulands.com, DC first and AC last in chastotnik.ua), so
    that none is taken for granted.
    """
    columns = (
        Column(phrase("Inverter"), 0.8),
        Column(phrase("Step"), right=True),
        Column(phrase("Switching on, as the maker states it"), 2.0),
    )
    types = {unit.type_name: (unit.product or unit.type_name, unit.type) for unit in system.of(InverterUnit)}
    rows: list[tuple[Cell, ...]] = []
    for product, kind in types.values():
        steps = [given(text) for text in kind.switching_on] or [FILL_IN] * _LINES_COUNT
        rows += [(given(product), computed(verbatim(str(n))), step) for n, step in enumerate(steps, 1)]
    return Table("restore", phrase("Switching on again"), columns, tuple(rows))


_LINES_COUNT = 4
"""Lines to write on where no order is stated."""
