"""The lines below the symbol of a battery."""

from __future__ import annotations

from sld.layout.diagram.line import Line, Role, computed, kilo, line
from sld.model.device import Device
from sld.ratings.symbol import Symbol
from sld.spec.blocks.battery import Battery
from sld.steps import Ratings
from sld.words import Sayable, amount, phrase, sequence

__all__ = ["battery_lines"]


_EARTHED = {"plus": phrase("plus earthed"), "minus": phrase("minus earthed")}


def battery_lines(device: Device, given: Battery, ratings: Ratings) -> list[Line | None]:
    """Return make, energy, voltages, fault current, and what is built into the battery."""
    rated_v, least_v, most_v = given.rated_voltage_v, given.voltage_min_v, given.voltage_max_v
    between = sequence([amount(least_v), amount(most_v, "V")], "…") if least_v and most_v else None
    highest = phrase("≤ {voltage}", voltage=amount(most_v, "V")) if most_v else None
    lowest = phrase("≥ {voltage}", voltage=amount(least_v, "V")) if least_v else None
    inside: list[Sayable] = []
    if given.protection_rated_current_a is not None:
        inside.append(phrase("protection {current}", current=amount(given.protection_rated_current_a, "A")))
    if given.isolator_built_in:
        inside.append(phrase("isolator"))
    return [
        line(Role.PRODUCT, device.product),
        line(Role.RATED, kilo(given.energy_wh, "Wh") if given.energy_wh else None),
        line(Role.RATED, phrase("{voltage} DC", voltage=amount(rated_v, "V")) if rated_v else None),
        line(Role.DANGER, between or highest or lowest),
        line(Role.SETTING, _EARTHED[given.earthed_pole] if given.earthed_pole else None),
        computed(ratings.get(device.key, Symbol.IK_DC), "Ik"),
        line(Role.RATED, phrase("built in: {functions}", functions=sequence(inside)) if inside else None),
    ]
