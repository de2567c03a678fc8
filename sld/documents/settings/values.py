"""The values of the protection settings: expected from the set of the country, and lines for those read back."""

from __future__ import annotations

from collections.abc import Iterator

from sld.documents.cell import FILL_IN, Cell, State, designated, given
from sld.documents.procedure.laid_down import laid_down
from sld.documents.section import Column, Form, Table
from sld.grid.decide import met
from sld.grid.evidence import Standing
from sld.grid.settings import ASKED_FOR, Setting, SettingsSet, same_set
from sld.layout.diagram.ranges import joined
from sld.model.device import InverterUnit
from sld.model.planned import is_planned
from sld.model.system import System
from sld.steps import Ratings
from sld.steps.notified import facts
from sld.words import Sayable, amount, phrase, sequence, verbatim

__all__ = ["chosen", "read_back", "values"]


def _groups(system: System) -> dict[str, list[InverterUnit]]:
    """Return the inverters that are not only planned by the set that the spec names, empty where it names none."""
    found: dict[str, list[InverterUnit]] = {}
    for unit in system.of(InverterUnit):
        if not is_planned(system, unit):
            said = unit.given.network_settings
            found.setdefault(said.set if said else "", []).append(unit)
    return found


def _sets(system: System, ratings: Ratings, written: str) -> list[SettingsSet]:
    """Return the set that is named; where none is, each that may hold here: nothing is chosen silently."""
    known = system.grid_rules.sets
    if written:
        return [each for each in known if same_set(each.called, written)][-1:]
    return [each for each in known if met(each, facts(system, ratings))]


def chosen(system: System, ratings: Ratings) -> Form:
    """Return which set holds for which inverters, and who says so."""
    fields: list[tuple[Sayable, Cell]] = []
    for written, units in _groups(system).items():
        said = units[0].given.network_settings
        edition = f", {said.edition}" if said and said.edition else ""
        caption = phrase("Set for {units}", units=joined(each.designation for each in units))
        if written:
            fields.append((caption, given(verbatim(written + edition))))
            continue
        sets = _sets(system, ratings, written)
        names = sequence([sequence([each.called, each.edition]) for each in sets], "; ")
        told = (
            phrase("not given; by the rules {name}: confirm", name=names)
            if len(sets) == 1
            else phrase("not given; one of {names}: ask the network operator", names=names)
        )
        fields.append((caption, laid_down(sets[0], told) if sets else FILL_IN))
    codes = dict.fromkeys(each.given.grid_code for each in system.of(InverterUnit) if each.given.grid_code)
    if codes:
        fields.append((phrase("Said at the inverters"), given(sequence(codes, "; "))))
    return Form("settings_sets", phrase("Settings sets"), tuple(fields))


def values(system: System, ratings: Ratings) -> Table:
    """Return what each set says for each function, a blank where that is not known, and lines for what is read."""
    columns = (
        Column(phrase("Designation")),
        Column(phrase("Function"), 1.0),
        Column(phrase("Expected"), 1.6),
        Column(phrase("Clause, edition"), below=True),
        Column(phrase("Read back: value")),
        Column(phrase("Time")),
    )
    rows: list[tuple[Cell, ...]] = []
    for written, units in _groups(system).items():
        names = designated(joined(each.designation for each in units))
        sets: list[SettingsSet | None] = [*_sets(system, ratings, written)]
        for each in sets or [None]:
            rows += [(names, *row, FILL_IN, FILL_IN) for row in _of_set(system, each)]
    return Table("settings_values", phrase("Protection settings"), columns, tuple(rows))


def _of_set(system: System, asked: SettingsSet | None) -> Iterator[tuple[Cell, ...]]:
    """Yield function, expected value and clause for each setting of a set; lines where it is not known what it says."""
    known = [each for each in system.grid_rules.settings if asked and asked.name in each.sets]
    for each in known:
        yield given(each.function.phrase), _expected(system, each, asked), laid_down(each, each.cited)
    for function in ASKED_FOR if not known else ():
        name = laid_down(asked, asked.cited) if asked else FILL_IN
        yield given(function.phrase), FILL_IN, name


def _expected(system: System, setting: Setting, asked: SettingsSet | None) -> Cell:
    value = _value(setting, system.voltage_of_one_phase_v)
    called = asked.called if asked else ""
    if setting.standing is Standing.CONFIRMED:
        return laid_down(setting, phrase("{value} for {set}", value=value, set=called))
    said = phrase("expected {value} for {set}, {edition}: confirm", value=value, set=called, edition=setting.edition)
    return laid_down(setting, said)


def _value(setting: Setting, nominal_v: float) -> Sayable:
    """Return a value with its delay; a multiple of the nominal voltage also in volts."""
    if setting.unit == "pu":
        value: Sayable = phrase(
            "{volts} ({factor} Un)",
            volts=amount(setting.of(nominal_v), "V", 4),
            factor=amount(setting.value, "", 4),
        )
    else:
        value = amount(setting.value, setting.unit, 4)
    return sequence([value, *([amount(setting.time_s, "s", 4)] if setting.time_s else [])])


_READ = (
    Column(phrase("Designation")),
    Column(phrase("Serial number"), 1.0),
    Column(phrase("Firmware"), 1.0),
    Column(phrase("Read by")),
    Column(phrase("Date")),
    Column(phrase("All as above")),
)


def read_back(system: System) -> Table:
    """Return a row for each inverter that is read back, with lines to fill in."""
    rows = tuple(_read(unit) for unit in system.of(InverterUnit) if not is_planned(system, unit))
    return Table("settings_read", phrase("Read back"), _READ, rows)


def _read(unit: InverterUnit) -> tuple[Cell, ...]:
    said = unit.given
    serial = said.serial_numbers[unit.copy - 1] if unit.copy <= len(said.serial_numbers) else None
    yes_no = Cell(phrase("yes □   no □"), State.BLANK)
    return (
        designated(unit.designation),
        given(serial) if serial else FILL_IN,
        given(said.firmware) if said.firmware else FILL_IN,
        FILL_IN,
        FILL_IN,
        yes_no,
    )
