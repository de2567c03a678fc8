"""What is unusual in a spec whose shape and names are good: refused with a question, unless the spec accepts it.

Each block knows the usual ranges of its own values (`Block.doubts`); here stand those that take more than one block.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import inf
from typing import NamedTuple

from sld.finding import Finding, Severity, SpecPath
from sld.spec.blocks.ac_protection import Breaker, Fuse, Rcbo
from sld.spec.blocks.block import Block
from sld.spec.blocks.dc_device import DcIsolator
from sld.spec.blocks.inverter import Inverter, InverterType
from sld.spec.blocks.string import Input
from sld.spec.blocks.supply import usual_voltage_v
from sld.spec.document import Spec, follows_nec
from sld.spec.supply_points import supply_points
from sld.spec.unusable_value import dotted
from sld.spec.usual import Doubt, doubt_of_ratio
from sld.words import Phrase, amount, phrase

__all__ = ["CODE", "Unusual", "refused", "unusual"]

CODE = "SP41"
_ARRAY_OVER_INVERTER = 5.0
_VOLTAGE_OVER_SUPPLY = (0.8, 1.2)
_CURRENT_OVER_POWER = (0.7, 3.0)
_BACKUP_OVER_RATED = (0.1, 2.0)
_ISOLATOR_OVER_ARRAY, _ISOLATOR_USUAL_A = 5.0, 63.0
_FAULT_OVER_RATED = {"backup": (0.9, 5.0), "generator": (0.9, 12.0)}
_LOOP_OVER_SHORT_CIRCUIT = 0.5
_BOARD_OVER_INCOMING = 9.5
"""Shares that no ordinary plant has (common practice, no source)."""


class Unusual(NamedTuple):
    """An unusual value: where it stands, what is unusual, and what to ask."""

    at: SpecPath
    said: Phrase
    asked: str


def unusual(spec: Spec) -> list[Unusual]:
    """Return every unusual value of a spec, in the order of its blocks."""
    found = [_at(path, doubt) for path, block in _blocks(spec, ()) for doubt in block.doubts()]
    between = (*_of_inverters(spec), *_of_second_sources(spec), *_of_the_supply(spec), *_of_boards(spec))
    return [*found, *(_at(path, doubt) for path, doubt in between)]


def refused(spec: Spec) -> list[Finding]:
    """Return a finding for each unusual value that the spec does not accept at its very place."""
    accepted = {entry.at for entry in spec.accept if entry.code == CODE}
    asked: dict[SpecPath, Unusual] = {}
    for point in supply_points(spec):
        for each in unusual(point.spec):
            at = point.place(each.at)
            if dotted(at) not in accepted:
                asked.setdefault(at, each)
    return [Finding(CODE, Severity.DANGER, f"{each.said}: {each.asked}", _remedy(at), at) for at, each in asked.items()]


def _remedy(at: SpecPath) -> str:
    return f"correct it; if it is meant, say why under `accept`, with `code: {CODE}` and `at: {dotted(at)}`"


def _at(path: SpecPath, doubt: Doubt) -> Unusual:
    return Unusual((*path, *doubt.key.split(".")), doubt.said, doubt.asked)


_HOLDS_BLOCKS = (Block, dict, list)
"""What may have blocks in it. A spec that was read has no other mapping; to ask for any takes several times as long."""


def _blocks(block: Block, path: SpecPath) -> Iterator[tuple[SpecPath, Block]]:
    """Yield a block and those in it with their paths; what is left out has no place that could be asked about."""
    yield path, block
    for attribute, field in type(block).model_fields.items():
        if attribute in block.model_fields_set:
            value = getattr(block, attribute)
            if isinstance(value, _HOLDS_BLOCKS):
                yield from _blocks_in(value, (*path, field.alias or attribute))


def _blocks_in(value: object, path: SpecPath) -> Iterator[tuple[SpecPath, Block]]:
    """Yield the blocks in the value of a key; a quantity or a word has none."""
    if isinstance(value, Block):
        yield from _blocks(value, path)
    elif isinstance(value, dict | list):
        for name, inner in value.items() if isinstance(value, dict) else enumerate(value):
            if isinstance(inner, _HOLDS_BLOCKS):
                yield from _blocks_in(inner, (*path, name))


def _of_inverters(spec: Spec) -> Iterator[tuple[SpecPath, Doubt]]:
    used = {inverter.type for inverter in spec.inverters.values()}
    for name, kind in spec.types.inverters.items():
        if name in used:
            for doubt in (_rated_voltage(spec, kind), _current(spec, kind)):
                if doubt is not None:
                    yield ("types", "inverters", name), doubt
    for name, inverter in spec.inverters.items():
        if doubt := _array(spec, inverter):
            yield ("inverters", name), doubt
        for index, given in enumerate(inverter.inputs):
            for way, doubt in _isolators(spec, given):
                yield ("inverters", name, "inputs", index, *way) if way[0] == "circuit" else way, doubt


def _array(spec: Spec, inverter: Inverter) -> Doubt | None:
    """Return the doubt about an array that is far too large for its inverter."""
    strings = [string for given in inverter.inputs for string in given.strings]
    array_w = sum(
        spec.types.modules[string.module].rated_power_w * string.modules_in_series * string.count for string in strings
    )
    ratio = array_w / spec.types.inverters[inverter.type].rated_power_w
    asked = "is the power of the inverter or a number of modules wrong?"
    return doubt_of_ratio("inputs", phrase("array power over inverter power"), ratio, (0, _ARRAY_OVER_INVERTER), asked)


def _isolators(spec: Spec, given: Input) -> Iterator[tuple[SpecPath, Doubt]]:
    """Yield the doubts about DC isolators for many times what the modules at their input give: a digit too many."""
    isc_a = sum(spec.types.modules[each.module].short_circuit_current_a * each.count for each in given.strings)
    what = phrase("rated current of the isolator over the short-circuit current of its array")
    for place, device in enumerate(given.circuit or ()):
        if not isinstance(device, DcIsolator):
            continue
        kind = spec.types.dc_devices.get(device.type or "")
        of_type = kind.rated_current_a if isinstance(kind, DcIsolator) else None
        rated_a = device.rated_current_a or of_type or 0.0
        most = max(_ISOLATOR_OVER_ARRAY, _ISOLATOR_USUAL_A / isc_a)
        way = ("circuit", place) if device.rated_current_a else ("types", "dc_devices", device.type or "")
        asked = "is a digit of one of them wrong?"
        if doubt := doubt_of_ratio("rated_current", what, rated_a / isc_a, (0, most), asked):
            yield way, doubt


def _nominal_v(spec: Spec) -> float:
    return spec.supply.voltage_v or usual_voltage_v(spec.supply, follows_nec(spec.profile))


def _voltages_v(spec: Spec, phases: int) -> tuple[float, ...]:
    """Return the voltages of the supply that an inverter with so many phases can work at."""
    nominal_v = _nominal_v(spec)
    if phases == 3:
        return (nominal_v,)
    if not spec.supply.has_neutral:
        return (nominal_v,)
    if spec.supply.phases == 3:
        return (nominal_v, nominal_v / 3**0.5)
    return (nominal_v, nominal_v / 2) if spec.supply.split_phase else (nominal_v,)


def _rated_voltage(spec: Spec, kind: InverterType) -> Doubt | None:
    """Return the doubt about a rated voltage that the supply does not have."""
    low, high = _VOLTAGE_OVER_SUPPLY
    voltages_v = _voltages_v(spec, kind.phases)
    rated_v = kind.rated_voltage_v
    if rated_v is None or any(low <= rated_v / voltage_v <= high for voltage_v in voltages_v):
        return None
    said = phrase(
        "{key} is {value} on a supply of {supply}",
        key="`rated_voltage`", value=amount(rated_v, "V"), supply=amount(_nominal_v(spec), "V"),
    )  # fmt: skip
    return Doubt("rated_voltage", said, "is it the AC voltage of this inverter, and the voltage of the supply right?")


def _current(spec: Spec, kind: InverterType) -> Doubt | None:
    """Return the doubt about an AC current that does not go with the power."""
    if kind.current_max_a is None:
        return None
    power_va = (kind.apparent_power_max_va or kind.rated_power_w) / (3**0.5 if kind.phases == 3 else 1)
    voltages_v = (kind.rated_voltage_v,) if kind.rated_voltage_v else _voltages_v(spec, kind.phases)
    what, asked = phrase("AC current over that of the power"), "is a digit of the current or of the power wrong?"
    found = [
        doubt_of_ratio("current_max", what, kind.current_max_a * voltage_v / power_va, _CURRENT_OVER_POWER, asked)
        for voltage_v in voltages_v
    ]
    return None if None in found else found[-1]


def _of_the_supply(spec: Spec) -> Iterator[tuple[SpecPath, Doubt]]:
    """Yield the doubt about an earth fault loop far below what the stated short circuit leaves."""
    loop_ohm, fault_ka = spec.supply.loop_impedance_ohm, spec.supply.prospective_fault_current_ka
    if loop_ohm is None or fault_ka is None:
        return
    to_earth_v = _nominal_v(spec) / (3**0.5 if spec.supply.phases == 3 else 1)
    ratio = loop_ohm * 1000 * fault_ka / to_earth_v
    what = phrase("loop impedance over that of the highest short circuit")
    asked = "is a digit of one of them wrong?"
    if doubt := doubt_of_ratio("loop_impedance", what, ratio, (_LOOP_OVER_SHORT_CIRCUIT, inf), asked):
        yield ("supply",), doubt


def _of_boards(spec: Spec) -> Iterator[tuple[SpecPath, Doubt]]:
    """Yield the doubts about boards that are rated far above the device that feeds them: a digit too many hides all."""
    for name, board in spec.boards.items():
        incoming = (each for each in board.circuit or () if isinstance(each, Breaker | Rcbo | Fuse))
        fed_a = next((each.rated_current_a for each in incoming), None)
        fed_a = fed_a or (spec.supply.service_fuse_a if board.is_main else None)
        if fed_a is None or board.rated_current_a is None:
            continue
        what = phrase("rated current of the board over that of the device that feeds it")
        ratio, asked = board.rated_current_a / fed_a, "is a digit of one of them wrong?"
        if doubt := doubt_of_ratio("rated_current", what, ratio, (0, _BOARD_OVER_INCOMING), asked):
            yield ("boards", name), doubt


def _of_second_sources(spec: Spec) -> Iterator[tuple[SpecPath, Doubt]]:
    """Yield what is unusual of backup outputs and generators: a slip there lets devices trip that never will."""
    asked = "is a digit of one of them wrong?"
    for name, kind in spec.types.inverters.items():
        if (backup := kind.backup) is None:
            continue
        ratio = backup.power_va / (kind.apparent_power_max_va or kind.rated_power_w)
        what = phrase("power of the backup output over that of the inverter")
        if doubt := doubt_of_ratio("backup.power", what, ratio, _BACKUP_OVER_RATED, asked):
            yield ("types", "inverters", name), doubt
        fault_a, rated_a = backup.short_circuit_current_a, _rated_a(spec, backup.power_va, kind.phases)
        if doubt := _fault("backup", "backup.short_circuit_current", fault_a, rated_a):
            yield ("types", "inverters", name), doubt
    for name, generator in spec.generators.items():
        rated_a = generator.current_max_a or _rated_a(spec, generator.power_va, generator.phases)
        doubt = _fault("generator", "short_circuit_current", generator.short_circuit_current_a, rated_a)
        if doubt is not None:
            yield ("generators", name), doubt


def _rated_a(spec: Spec, power_va: float, phases: int | None) -> float:
    """Return the current of a power at the lowest voltage that the supply has for it. [A]"""
    phases = phases or spec.supply.phases
    return power_va / (min(_voltages_v(spec, phases)) * (3**0.5 if phases == 3 else 1))


def _fault(source: str, key: str, fault_a: float | None, rated_a: float) -> Doubt | None:
    if fault_a is None:
        return None
    what, asked = phrase("short-circuit current over rated current"), "is a digit of one of them wrong?"
    return doubt_of_ratio(key, what, fault_a / rated_a, _FAULT_OVER_RATED[source], asked)
