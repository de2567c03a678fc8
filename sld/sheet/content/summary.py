"""The summary of computed ratings: what an inspector or a network operator asks first."""

from __future__ import annotations

from collections import Counter

from sld.model.device import BatteryUnit, InputTerminal, InverterUnit, StringGroup
from sld.model.system import System
from sld.quantity import Rating, shown
from sld.ratings.symbol import POWER_BY_STATUS, Symbol
from sld.sheet.listings.table import Column, Table
from sld.steps import Ratings

__all__ = ["summary"]

_COLUMNS = (Column("Quantity", 1.0), Column("Value"), Column("Quantity", 1.0), Column("Value"))

_Row = tuple[str, str]


def summary(system: System, ratings: Ratings) -> Table:
    """Return the table of the ratings of the whole system, two quantities a row."""
    rows = [row for row in (*_array(system, ratings), *_supply(system, ratings)) if row[1]]
    half = (len(rows) + 1) // 2
    right = [*rows[half:], ("", "")]
    return Table("Computed summary", _COLUMNS, tuple((*rows[index], *right[index]) for index in range(half)))


def _array(system: System, ratings: Ratings) -> list[_Row]:
    modules = Counter[str]()
    for group in system.of(StringGroup):
        modules[_named(group)] += group.given.count * group.given.modules_in_series
    inverters = Counter(_named(unit) for unit in system.of(InverterUnit))
    cold = shown(system.site.temperature_min_c)
    limits = [unit.type.dc_voltage_max_v for unit in system.of(InverterUnit)]
    return [
        *((name, f"{count} module{'s' if count > 1 else ''}") for name, count in modules.items()),
        (f"Strings{_without_future(ratings, Symbol.PDC)}", _whole(ratings.get("", Symbol.NSTRINGS))),
        (
            f"Rated DC power, modules at STC{_without_future(ratings, Symbol.PDC)}",
            _kilo(ratings.get("", Symbol.PDC), "kWp"),
        ),
        *_statuses(ratings),
        (f"Highest DC voltage Uoc at {cold} °C", _quantity(ratings.get("", Symbol.UOC_MAX))),
        ("Lowest DC limit of the inverters", f"{shown(min(limits))} V" if limits else ""),
        ("Insulation test, DC side", _insulation(ratings)),
        ("Insulation before start", _before_start(ratings)),
        *_towards_earth(system, ratings),
        *((name, f"{count} inverter{'s' if count > 1 else ''}") for name, count in inverters.items()),
    ]


def _supply(system: System, ratings: Ratings) -> list[_Row]:
    limit_w = system.supply.export_limit_w
    rise, allowed = ratings.get("", Symbol.DU_AC), ratings.get("", Symbol.DU_LIMIT)
    bound = "limit" if system.supply.voltage_rise_limit_percent is not None else "target"
    within = f" ({bound} {allowed.quantity()})" if allowed else ""
    return [
        (f"Rated AC power{_without_future(ratings, Symbol.PAC)}", _kilo(ratings.get("", Symbol.PAC), "kW")),
        (
            f"Highest apparent power of inverters{_without_future(ratings, Symbol.PAC)}",
            _kilo(ratings.get("", Symbol.SAC), "kVA"),
        ),
        *_batteries(system),
        ("Export current a line, no diversity", _quantity(ratings.get("", Symbol.IEXPORT))),
        ("Feed-in limit at the supply point", "none stated" if limit_w is None else f"{shown(limit_w / 1000)} kW"),
        (f"Highest rise to an inverter{within}", _quantity(rise)),
        (_told("Fault current at the supply", ratings.get("", Symbol.IPF)), _quantity(ratings.get("", Symbol.IPF))),
        (_told("Loop impedance of the supply", ratings.get("", Symbol.ZE)), _quantity(ratings.get("", Symbol.ZE))),
    ]


def _batteries(system: System) -> list[_Row]:
    """Return what the batteries hold, and the power of those with a converter of their own on the AC side."""
    given = [unit.given for unit in system.of(BatteryUnit) if unit.status != "future"]
    energy_wh = sum(each.energy_wh or 0.0 for each in given)
    power_va = sum(each.converter_power_va or 0.0 for each in given if not each.inverter)
    return [
        ("Usable energy of the batteries", f"{shown(energy_wh / 1000)} kWh" if energy_wh else ""),
        ("Apparent power of battery converters", f"{shown(power_va / 1000)} kVA" if power_va else ""),
    ]


def _named(device: StringGroup | InverterUnit) -> str:
    """Return make and model, and the status of what is only planned."""
    return f"{device.product}, future" if device.status == "future" else device.product


def _statuses(ratings: Ratings) -> list[_Row]:
    """Return the powers of what exists, is new and is planned, where there is more than one of these."""
    found = []
    for status, (dc_symbol, ac_symbol) in POWER_BY_STATUS.items():
        powers = (_kilo(ratings.get("", dc_symbol), "kWp"), _kilo(ratings.get("", ac_symbol), "kW"))
        found.append((f"DC and AC power, {status}", ", ".join(power for power in powers if power)))
    return found


def _without_future(ratings: Ratings, symbol: Symbol) -> str:
    """Return words for a sum that leaves out what is only planned; a sum of nothing else needs none."""
    place = (Symbol.PDC, Symbol.PAC).index(symbol)
    found = {status for status, symbols in POWER_BY_STATUS.items() if ratings.get("", symbols[place])}
    return ", without future" if "future" in found and len(found) > 1 else ""


def _told(name: str, rating: Rating | None) -> str:
    """Return the name of a value, marked where the value was assumed."""
    return f"{name}, assumed" if rating and rating.assumptions else name


def _insulation(ratings: Ratings) -> str:
    test, least = ratings.get("", Symbol.UTEST), ratings.get("", Symbol.RISO_MIN)
    return f"{test.quantity()}, ≥ {least.quantity()}" if test and least else ""


def _before_start(ratings: Ratings) -> str:
    """Return the least insulation resistance before start: the higher of what inverter and array size ask for."""
    found = [rating for symbol in (Symbol.RISO_START, Symbol.RISO_ARRAY) if (rating := ratings.get("", symbol))]
    return f"≥ {max(found, key=lambda rating: rating.value).quantity()}" if found else ""


def _towards_earth(system: System, ratings: Ratings) -> list[_Row]:
    """Return what concerns the array towards earth: residual current monitoring and the functional earth."""
    units = list(system.of(InverterUnit))
    monitors = [rating.value for unit in units if (rating := ratings.get(unit.key, Symbol.IDN_MONITOR))]
    leaks = [rating.value for unit in units if (rating := ratings.get(unit.key, Symbol.ILEAK_ARRAY))]
    opened = [rating.value for each in system.of(InputTerminal) if (rating := ratings.get(each.key, Symbol.IN_FE_MAX))]
    found = []
    if monitors and leaks:
        found.append(("Array leakage / monitor", f"{shown(max(leaks))} / ≤ {shown(min(monitors))} mA"))
    if opened:
        found.append(("Device in the functional earth", f"≤ {shown(min(opened))} A"))
    return found


def _quantity(rating: Rating | None) -> str:
    return rating.quantity() if rating else ""


def _whole(rating: Rating | None) -> str:
    return f"{rating.value:.0f}" if rating else ""


def _kilo(rating: Rating | None, unit: str) -> str:
    return f"{shown(rating.value / 1000, 4)} {unit}" if rating else ""
