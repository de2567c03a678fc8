"""The summary of computed ratings: what an inspector or a network operator asks first."""

from __future__ import annotations

from collections import Counter

from sld.model.device import InverterUnit, StringGroup
from sld.model.system import System
from sld.quantity import Rating, shown
from sld.rate import Ratings
from sld.sheet.blocks.table import Column, TableBlock

__all__ = ["summary"]

_COLUMNS = (Column("Quantity"), Column("Value"), Column("How", 1.0))


def summary(system: System, ratings: Ratings) -> TableBlock:
    """Return the table of the ratings of the whole system."""
    rows: list[tuple[str, str, str]] = []

    def add(name: str, value: str, how: str = "") -> None:
        if value:
            rows.append((name, value, how))

    modules = Counter[str]()
    for group in system.of(StringGroup):
        words = " ".join(part for part in (group.make, group.model) if part)
        modules[words] += group.given.count * group.given.modules_in_series
    inverters = Counter(" ".join(part for part in (u.make, u.model) if part) for u in system.of(InverterUnit))
    add("PV modules", _whole(ratings.get("", "N")), _listed(modules))
    add("Strings", _whole(ratings.get("", "Nstrings")))
    add("Rated DC power", _kilo(ratings.get("", "Pdc"), "kWp"), "sum of the modules at STC")
    add("Inverters", str(sum(inverters.values())), _listed(inverters))
    add("Rated AC power", _kilo(ratings.get("", "Pac"), "kW"), "sum of the inverters")
    add("Highest apparent power", _kilo(ratings.get("", "Sac"), "kVA"), "sum of the inverters")
    _voltages(system, ratings, add)
    export = ratings.get("", "Iexport")
    if export:
        add("Export current a line", export.quantity(), "sum of the inverters, no diversity")
    if system.supply.export_limit_w is not None:
        add("Feed-in limit", f"{shown(system.supply.export_limit_w / 1000)} kW", "as agreed at the supply point")
    rise, limit = ratings.get("", "Δu,ac"), ratings.get("", "Δu,limit")
    if rise:
        allowed = f"limit {limit.quantity()}, " if limit else ""
        add("Highest voltage rise", rise.quantity(), f"{allowed}supply to inverter; {'; '.join(rise.assumptions)}")
    fault, loop = ratings.get("", "Ipf"), ratings.get("", "Ze")
    if fault:
        add("Fault current at the supply", fault.quantity(), "assumed" if fault.assumptions else "as specified")
    if loop:
        add("Loop impedance of the supply", loop.quantity(), "assumed" if loop.assumptions else "as specified")
    test, least = ratings.get("", "Utest"), ratings.get("", "Riso,min")
    if test and least:
        add("Insulation test, DC side", f"{test.quantity()}, at least {least.quantity()}", test.clause)
    return TableBlock("Computed summary", _COLUMNS, tuple(rows))


def _voltages(system: System, ratings: Ratings, add) -> None:  # type: ignore[no-untyped-def]
    highest = ratings.get("", "Uoc,max")
    if highest:
        limits = [unit.type.dc_voltage_max_v for unit in system.of(InverterUnit)]
        cold = shown(system.site.temperature_min_c)
        add(
            "Highest DC voltage",
            highest.quantity(),
            f"open circuit at {cold} °C; inverters take {shown(min(limits))} V",
        )


def _whole(rating: Rating | None) -> str:
    return f"{rating.value:.0f}" if rating else ""


def _kilo(rating: Rating | None, unit: str) -> str:
    return f"{shown(rating.value / 1000, 4)} {unit}" if rating else ""


def _listed(counts: Counter[str]) -> str:
    return "; ".join(f"{count} × {name}" for name, count in counts.items())
