"""What an inspector or a network operator asks first: each quantity with its value and its limit, from the array on."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence

from sld.citation import with_mark
from sld.documents.cell import EMPTY, Cell, State, by_ratings, computed, given, of_rating
from sld.documents.drawing.answers import ac_isolation, communication, dc_isolation, earthing, meters
from sld.documents.drawing.nearest import dc_rows, fault_rows, highest_voltage, supply_side_rows
from sld.documents.section import Column, Table
from sld.frozen import replace
from sld.layout.diagram.ranges import joined
from sld.model.device import BatteryUnit, Device, InputTerminal, InverterUnit, StringGroup
from sld.model.limiters import feed_in_limiters
from sld.model.planned import feeding, is_planned, leaves_out_planned, without_planned
from sld.model.system import System
from sld.model.wording import titled
from sld.number import digits_to_tell_apart
from sld.quantity import Rating
from sld.ratings.symbol import POWER_BY_STATUS, Symbol
from sld.steps import Ratings
from sld.words import NOTHING, Phrase, Sayable, amount, counted, phrase, sequence, unbroken, verbatim

__all__ = ["quantities", "summary"]

_COLUMNS = (Column(phrase("Quantity"), 1.2), Column(phrase("Value, limit, place"), 1.0))

_Row = tuple[Sayable | Cell, Cell]


def summary(system: System, ratings: Ratings) -> Table:
    """Return the table for review. Of what there are several, the one that is nearest to its limit is told."""
    rows = [*_array(system, ratings), *_supply(system, ratings, list(ac_isolation(system)), _network(system))]
    return Table("summary", titled(phrase("Summary"), system), _COLUMNS, tuple(_told(rows)), abreast=True)


def quantities(system: System, ratings: Ratings) -> Iterator[tuple[Cell, Cell]]:
    """Yield the rows of the summary but those on devices and on the network, which have tables where this is asked."""
    return _told([*_array(system, ratings), *_supply(system, ratings)])


def _told(rows: Iterable[_Row]) -> Iterator[tuple[Cell, Cell]]:
    """Yield the rows that say something."""
    for name, value in rows:
        if value != EMPTY:
            yield name if isinstance(name, Cell) else given(name), value


def _network(system: System) -> list[_Row]:
    """Return the meters and the limit of the feed-in."""
    limit_w = system.supply.export_limit_w
    none = Cell(phrase("none stated"), State.BLANK)
    return [*meters(system), (phrase("Feed-in limit"), none if limit_w is None else _limited(system, limit_w))]


def _array(system: System, ratings: Ratings) -> list[_Row]:
    modules = Counter[Sayable]()
    firsts = system.one_of_each()
    for group in system.of(StringGroup):
        modules[_named(system, group)] += group.given.count * group.given.modules_in_series
    inverters = Counter(_named(system, unit) for unit in system.of(InverterUnit))
    of_strings, of_inputs = _rest(system, system.of(StringGroup)), _rest(system, system.of(InputTerminal))
    return [
        *((name, computed(counted("{count} module", "{count} modules", count))) for name, count in modules.items()),
        (
            of_strings(phrase("Strings, DC power at STC")),
            _together([_whole(ratings.get("", Symbol.NSTRINGS)), _kilo(ratings.get("", Symbol.PDC), "kWp")]),
        ),
        *_statuses(ratings),
        *(
            (of_inputs(phrase("Highest Uoc at {cold}", cold=amount(system.site.temperature_min_c, "°C"))), held)
            for held in highest_voltage(firsts, ratings)
        ),
        *dc_rows(firsts, ratings),
        *dc_isolation(system),
        (
            of_inputs(phrase("Insulation test; before start")),
            _together([_insulation(firsts, ratings), _before_start(ratings)], "; "),
        ),
        *_towards_earth(firsts, ratings),
        *(
            (name, computed(counted("{count} inverter", "{count} inverters", count)))
            for name, count in inverters.items()
        ),
    ]


def _supply(
    system: System, ratings: Ratings, isolation: Sequence[_Row] = (), network: Sequence[_Row] = ()
) -> list[_Row]:
    """Return the rows on the AC side. isolation, network: those on devices and on the network."""
    sources, firsts = feeding(system), system.one_of_each()
    of_sources = _rest(system, sources)
    fault, loop = ratings.get("", Symbol.IPF), ratings.get("", Symbol.ZE)
    return [
        (
            of_sources(
                phrase("AC power; apparent power with battery converters")
                if any(isinstance(each, BatteryUnit) for each in sources)
                else phrase("AC power, apparent power")
            ),
            _together([_kilo(ratings.get("", Symbol.PAC), "kW"), _kilo(ratings.get("", Symbol.SAC), "kVA")]),
        ),
        *_batteries(system),
        *isolation,
        *supply_side_rows(firsts, ratings),
        (of_sources(phrase("Export current a line")), _value(ratings.get("", Symbol.IEXPORT))),
        _rise(system, ratings.get("", Symbol.DU_LIMIT), ratings.get("", Symbol.DU_AC)),
        *fault_rows(firsts, ratings),
        (phrase("Fault current, loop of the supply"), _together([_known(fault), _known(loop)])),
        earthing(system),
        *network,
        communication(system),
    ]


def _limited(system: System, limit_w: float) -> Cell:
    """Return the limit of the feed-in and what keeps it."""
    names = [limiter.designation for limiter, _ in feed_in_limiters(system)]
    by = phrase("by {device}", device=joined(names)) if names else NOTHING
    return given(sequence([amount(limit_w / 1000, "kW"), by]))


def _rise(system: System, allowed: Rating | None, highest: Rating | None) -> _Row:
    """Return the highest voltage rise with what it is held against; what is planned raises it too."""
    name = phrase("Highest rise to an inverter")
    if leaves_out_planned(system, feeding(system)):
        name = phrase("{quantity}, with future", quantity=name)
    if allowed is None or highest is None:
        return name, _value(highest)
    digits = digits_to_tell_apart(highest.value, allowed.value)
    has, most = amount(highest.value, "%", digits), amount(allowed.value, "%", digits)
    if system.supply.voltage_rise_limit_percent is None:
        told: Sayable = phrase("{value}, target {allowed}", value=has, allowed=most)
    else:
        told = unbroken(has, ">" if highest.value > allowed.value else "≤", most)
    return name, by_ratings(with_mark(told, highest, allowed), highest, allowed)


def _batteries(system: System) -> list[_Row]:
    """Return what the batteries hold, and the power of those with a converter of their own on the AC side."""
    stores = list(system.of(BatteryUnit))
    given = [unit.given for unit in stores if not is_planned(system, unit)]
    of_stores = _rest(system, stores)
    energy_wh = sum(each.energy_wh or 0.0 for each in given)
    power_va = sum(each.converter_power_va or 0.0 for each in given if not each.inverter)
    told = [
        *([computed(amount(energy_wh / 1000, "kWh"))] if energy_wh else ()),
        *([computed(amount(power_va / 1000, "kVA"))] if power_va else ()),
    ]
    name = phrase("Batteries, usable energy and converters") if power_va else phrase("Batteries, usable energy")
    return [(of_stores(name), _summed(told))]


def _summed(cells: Sequence[Cell]) -> Cell:
    return computed(sequence(cell.text for cell in cells)) if cells else EMPTY


def _named(system: System, device: StringGroup | InverterUnit) -> Sayable:
    """Return make and model, and the status of what is only planned."""
    if is_planned(system, device):
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


def _together(cells: Sequence[Cell], between: str = ", ") -> Cell:
    """Return several cells as one, those that are empty left out."""
    kept = [cell for cell in cells if cell != EMPTY]
    if not kept:
        return EMPTY
    behind = tuple(rating for cell in kept for rating in cell.ratings)
    return by_ratings(sequence([cell.text for cell in kept], between), *behind)


def _rest(system: System, devices: Iterable[Device]) -> Callable[[Phrase], Phrase]:
    """Return what names a quantity of some devices: that it is without those only planned, where there are such."""
    if leaves_out_planned(system, devices):
        return lambda quantity: phrase("{quantity}, without future", quantity=quantity)
    return lambda quantity: quantity


def _insulation(system: System, ratings: Ratings) -> Cell:
    """Return test voltage and least value of the strings, each pair once; a section of its own tells how."""
    pairs: dict[tuple[float, float], tuple[Rating, Rating]] = {}
    for each in without_planned(system, system.of(InputTerminal)):
        test, least = ratings.get(each.key, Symbol.UTEST), ratings.get(each.key, Symbol.RISO_MIN)
        if test is not None and least is not None:
            pairs.setdefault((test.value, least.value), (test, least))
    told = [
        with_mark(phrase("{test}, ≥ {least}", test=test, least=least), test, least)
        for _, (test, least) in sorted(pairs.items(), reverse=True)
    ]
    return by_ratings(sequence(told, "; "), *(each for pair in pairs.values() for each in pair)) if told else EMPTY


def _before_start(ratings: Ratings) -> Cell:
    """Return the least insulation resistance before start: the higher of what inverter and array size ask for."""
    found = [rating for symbol in (Symbol.RISO_START, Symbol.RISO_ARRAY) if (rating := ratings.get("", symbol))]
    if not found:
        return EMPTY
    least = max(found, key=lambda rating: rating.value)
    return by_ratings(with_mark(phrase("≥ {least}", least=least), least), least)


def _towards_earth(system: System, ratings: Ratings) -> list[_Row]:
    """Return what concerns the array towards earth: residual current monitoring and the functional earth."""
    units = without_planned(system, system.of(InverterUnit))
    monitors = [rating for unit in units if (rating := ratings.get(unit.key, Symbol.IDN_MONITOR))]
    leaks = [rating for unit in units if (rating := ratings.get(unit.key, Symbol.ILEAK_ARRAY))]
    opened = [rating for each in system.of(InputTerminal) if (rating := ratings.get(each.key, Symbol.IN_FE_MAX))]
    found: list[_Row] = []
    if monitors and leaks:
        leak, monitor = max(leaks, key=_number), min(monitors, key=_number)
        name = _rest(system, system.of(InverterUnit))(phrase("Array leakage, monitor"))
        told = unbroken(amount(leak.value, "mA"), "≤", amount(monitor.value, "mA"))
        found.append((name, by_ratings(with_mark(told, leak, monitor), leak, monitor)))
    if opened:
        least = min(opened, key=_number)
        most = phrase("≤ {least}", least=amount(least.value, "A"))
        found.append((phrase("Device in the functional earth"), by_ratings(with_mark(most, least), least)))
    return found


def _number(rating: Rating) -> float:
    return rating.value


def _value(rating: Rating | None) -> Cell:
    return of_rating(rating) if rating else EMPTY


def _known(rating: Rating | None) -> Cell:
    """Return the cell of a rating that says of itself whether it is assumed."""
    cell = _value(rating)
    return replace(cell, text=sequence([cell.text, phrase("assumed")], " ")) if rating and rating.assumptions else cell


def _whole(rating: Rating | None) -> Cell:
    return of_rating(rating, verbatim(f"{rating.value:.0f}")) if rating else EMPTY


def _kilo(rating: Rating | None, unit: str) -> Cell:
    return of_rating(rating, amount(rating.value / 1000, unit, digits=4)) if rating else EMPTY
