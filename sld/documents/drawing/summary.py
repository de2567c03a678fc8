"""The summary of computed ratings: what an inspector or a network operator asks first."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from sld.documents.cell import EMPTY, Cell, State, by_ratings, computed, given, of_rating
from sld.documents.section import Column, Table
from sld.model.device import BatteryUnit, InputTerminal, InverterUnit, StringGroup
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.symbol import POWER_BY_STATUS, Symbol
from sld.steps import Ratings
from sld.words import Sayable, amount, counted, phrase, sequence, verbatim

__all__ = ["summary"]

_COLUMNS = (
    Column(phrase("Quantity"), 1.0),
    Column(phrase("Value")),
    Column(phrase("Quantity"), 1.0),
    Column(phrase("Value")),
)

_Row = tuple[Sayable | Cell, Cell]


def summary(system: System, ratings: Ratings) -> Table:
    """Return the table of the ratings of the whole system, two quantities a row."""
    rows = [row for row in (*_array(system, ratings), *_supply(system, ratings)) if row[1] != EMPTY]
    half = (len(rows) + 1) // 2
    cells = [(name if isinstance(name, Cell) else given(name), value) for name, value in rows] + [(EMPTY, EMPTY)]
    return Table(
        "summary",
        phrase("Computed summary"),
        _COLUMNS,
        tuple((*cells[index], *cells[half + index]) for index in range(half)),
    )


def _array(system: System, ratings: Ratings) -> list[_Row]:
    modules = Counter[Sayable]()
    for group in system.of(StringGroup):
        modules[_named(group)] += group.given.count * group.given.modules_in_series
    inverters = Counter(_named(unit) for unit in system.of(InverterUnit))
    limits = [unit.type.dc_voltage_max_v for unit in system.of(InverterUnit)]
    without_future = _leaves_out_future(ratings, Symbol.PDC)
    return [
        *((name, computed(counted("{count} module", "{count} modules", count))) for name, count in modules.items()),
        (
            phrase("Strings, without future") if without_future else phrase("Strings"),
            _whole(ratings.get("", Symbol.NSTRINGS)),
        ),
        (
            phrase("Rated DC power, modules at STC, without future")
            if without_future
            else phrase("Rated DC power, modules at STC"),
            _kilo(ratings.get("", Symbol.PDC), "kWp"),
        ),
        *_statuses(ratings),
        (
            phrase("Highest DC voltage Uoc at {cold}", cold=amount(system.site.temperature_min_c, "°C")),
            _value(ratings.get("", Symbol.UOC_MAX)),
        ),
        (phrase("Lowest DC limit of the inverters"), given(amount(min(limits), "V")) if limits else EMPTY),
        (phrase("Insulation test of a string"), _insulation(system, ratings)),
        (phrase("Insulation before start"), _before_start(ratings)),
        *_towards_earth(system, ratings),
        *(
            (name, computed(counted("{count} inverter", "{count} inverters", count)))
            for name, count in inverters.items()
        ),
    ]


def _supply(system: System, ratings: Ratings) -> list[_Row]:
    limit_w = system.supply.export_limit_w
    power, apparent = phrase("Rated AC power"), phrase("Highest apparent power of inverters")
    if _leaves_out_future(ratings, Symbol.PAC):
        power = phrase("Rated AC power, without future")
        apparent = phrase("Highest apparent power of inverters, without future")
    fault, loop = ratings.get("", Symbol.IPF), ratings.get("", Symbol.ZE)
    return [
        (power, _kilo(ratings.get("", Symbol.PAC), "kW")),
        (apparent, _kilo(ratings.get("", Symbol.SAC), "kVA")),
        *_batteries(system),
        (phrase("Export current a line, no diversity"), _value(ratings.get("", Symbol.IEXPORT))),
        (
            phrase("Feed-in limit at the supply point"),
            Cell(phrase("none stated"), State.BLANK) if limit_w is None else given(amount(limit_w / 1000, "kW")),
        ),
        (_rise(system, ratings.get("", Symbol.DU_LIMIT)), _value(ratings.get("", Symbol.DU_AC))),
        (
            phrase("Fault current at the supply, assumed")
            if fault and fault.assumptions
            else phrase("Fault current at the supply"),
            _value(fault),
        ),
        (
            phrase("Loop impedance of the supply, assumed")
            if loop and loop.assumptions
            else phrase("Loop impedance of the supply"),
            _value(loop),
        ),
    ]


def _rise(system: System, allowed: Rating | None) -> Sayable | Cell:
    """Return the name of the highest voltage rise with what it is held against."""
    if allowed is None:
        return phrase("Highest rise to an inverter")
    if system.supply.voltage_rise_limit_percent is not None:
        return by_ratings(phrase("Highest rise to an inverter (limit {allowed})", allowed=allowed), allowed)
    return by_ratings(phrase("Highest rise to an inverter (target {allowed})", allowed=allowed), allowed)


def _batteries(system: System) -> list[_Row]:
    """Return what the batteries hold, and the power of those with a converter of their own on the AC side."""
    given = [unit.given for unit in system.of(BatteryUnit) if unit.status != "future"]
    energy_wh = sum(each.energy_wh or 0.0 for each in given)
    power_va = sum(each.converter_power_va or 0.0 for each in given if not each.inverter)
    return [
        (phrase("Usable energy of the batteries"), computed(amount(energy_wh / 1000, "kWh")) if energy_wh else EMPTY),
        (
            phrase("Apparent power of battery converters"),
            computed(amount(power_va / 1000, "kVA")) if power_va else EMPTY,
        ),
    ]


def _named(device: StringGroup | InverterUnit) -> Sayable:
    """Return make and model, and the status of what is only planned."""
    if device.status == "future":
        return phrase("{product}, future", product=device.product)
    return verbatim(device.product)


def _statuses(ratings: Ratings) -> list[_Row]:
    """Return the powers of what exists, is new and is planned, where there is more than one of these."""
    names = {
        "existing": phrase("DC and AC power, existing"),
        "new": phrase("DC and AC power, new"),
        "future": phrase("DC and AC power, future"),
    }
    found: list[_Row] = []
    for status, symbols in POWER_BY_STATUS.items():
        powers = [_kilo(ratings.get("", symbol), unit) for symbol, unit in zip(symbols, ("kWp", "kW"), strict=True)]
        found.append((names[status], _together(powers)))
    return found


def _together(cells: Sequence[Cell]) -> Cell:
    """Return several cells as one, those that are empty left out."""
    kept = [cell for cell in cells if cell != EMPTY]
    if not kept:
        return EMPTY
    behind = tuple(rating for cell in kept for rating in cell.ratings)
    return by_ratings(sequence(cell.text for cell in kept), *behind)


def _leaves_out_future(ratings: Ratings, symbol: Symbol) -> bool:
    """Return whether a sum leaves out what is only planned; a sum of nothing else leaves nothing out."""
    place = (Symbol.PDC, Symbol.PAC).index(symbol)
    found = {status for status, symbols in POWER_BY_STATUS.items() if ratings.get("", symbols[place])}
    return "future" in found and len(found) > 1


def _insulation(system: System, ratings: Ratings) -> Cell:
    """Return test voltage and least value of the strings, each pair once; a section of its own tells how."""
    pairs: dict[tuple[float, float], tuple[Rating, Rating]] = {}
    for each in system.of(InputTerminal):
        test, least = ratings.get(each.key, Symbol.UTEST), ratings.get(each.key, Symbol.RISO_MIN)
        if test is not None and least is not None:
            pairs.setdefault((test.value, least.value), (test, least))
    told = [
        phrase("{test}, ≥ {least}", test=test, least=least) for _, (test, least) in sorted(pairs.items(), reverse=True)
    ]
    return by_ratings(sequence(told, "; "), *(each for pair in pairs.values() for each in pair)) if told else EMPTY


def _before_start(ratings: Ratings) -> Cell:
    """Return the least insulation resistance before start: the higher of what inverter and array size ask for."""
    found = [rating for symbol in (Symbol.RISO_START, Symbol.RISO_ARRAY) if (rating := ratings.get("", symbol))]
    if not found:
        return EMPTY
    least = max(found, key=lambda rating: rating.value)
    return by_ratings(phrase("≥ {least}", least=least), least)


def _towards_earth(system: System, ratings: Ratings) -> list[_Row]:
    """Return what concerns the array towards earth: residual current monitoring and the functional earth."""
    units = list(system.of(InverterUnit))
    monitors = [rating for unit in units if (rating := ratings.get(unit.key, Symbol.IDN_MONITOR))]
    leaks = [rating for unit in units if (rating := ratings.get(unit.key, Symbol.ILEAK_ARRAY))]
    opened = [rating for each in system.of(InputTerminal) if (rating := ratings.get(each.key, Symbol.IN_FE_MAX))]
    found: list[_Row] = []
    if monitors and leaks:
        leak, monitor = max(leaks, key=_number), min(monitors, key=_number)
        told = phrase("{leak} / ≤ {monitor}", leak=amount(leak.value), monitor=amount(monitor.value, "mA"))
        found.append((phrase("Array leakage / monitor"), by_ratings(told, leak, monitor)))
    if opened:
        least = min(opened, key=_number)
        told = phrase("≤ {least}", least=amount(least.value, "A"))
        found.append((phrase("Device in the functional earth"), by_ratings(told, least)))
    return found


def _number(rating: Rating) -> float:
    return rating.value


def _value(rating: Rating | None) -> Cell:
    return of_rating(rating) if rating else EMPTY


def _whole(rating: Rating | None) -> Cell:
    return of_rating(rating, verbatim(f"{rating.value:.0f}")) if rating else EMPTY


def _kilo(rating: Rating | None, unit: str) -> Cell:
    return of_rating(rating, amount(rating.value / 1000, unit, digits=4)) if rating else EMPTY
