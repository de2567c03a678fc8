"""Kinds of devices in the spec language: forgetting a place that must know a kind is loud here, all places at once."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from functools import cache
from types import UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin, get_type_hints

import pytest
from package import PACKAGE, ROOT, Module, modules
from pydantic import TypeAdapter

from sld.documents.drawing.equipment import equipment
from sld.layout.diagram.labels import along, below
from sld.layout.diagram.symbol_of import symbol_of
from sld.model.build import build
from sld.model.device import Device
from sld.model.kinds import role
from sld.model.kinds.row import Kind
from sld.model.kinds.table import KINDS
from sld.model.system import System
from sld.model.wording import device_counts, device_word
from sld.spec.blocks.battery_circuit import BatteryDevice, BatteryDeviceType
from sld.spec.blocks.block import Block
from sld.spec.blocks.circuit import AcDevice, AcDeviceType, DcDevice, DcDeviceType, Installed, StringDevice
from sld.spec.blocks.data_bus import DataDevice
from sld.spec.document import Spec
from sld.steps import Ratings, rate
from sld.symbols.catalogue import names
from sld.words import ENGLISH

NEEDED = {"meter": {"purpose": "supply"}, "cable": {"length": "5 m"}, "changeover": {"second_source": "roof"}}
"""Keys without which a block of a kind is not valid."""

IDLE = {
    "earth": "the plain sign: every earth connection drawn so far says whether it is protective, functional or bonding",
}
"""Symbols of the catalogue that no spec leads to, each with the reason."""


NOT_ASKED_FOR = dict.fromkeys(
    ("CONVERSION", "MEASURING", "METERING", "REVERSE_BLOCKING", "STORAGE", "TRANSFORMATION"),
    "says what a device is for; no rule or step needs it so far",
)
"""Roles that nothing asks for, each with the reason."""


def members(union: Any) -> tuple[type[Block], ...]:
    """The blocks of a union told apart by `kind`."""
    return get_args(get_args(union)[0])


def kind_of(block: type[Block]) -> str:
    return str(get_args(block.model_fields["kind"].annotation)[0])


BATTERY = {kind_of(block): block for block in members(BatteryDevice)}
AC = {kind_of(block): block for block in members(AcDevice)}
DC = {kind_of(block): block for block in members(DcDevice)}
STRING = {kind_of(block): block for block in members(StringDevice) if block not in DC.values()}
DATA = get_args(DataDevice.model_fields["kind"].annotation)
CASES = [
    *(("ac", kind) for kind in AC),
    *(("dc", kind) for kind in DC),
    *(("string", kind) for kind in STRING),
    *(("battery", kind) for kind in BATTERY),
    *(("data", kind) for kind in DATA),
]
EACH = pytest.mark.parametrize(("side", "kind"), CASES)


@cache
def made(side: str, kind: str) -> tuple[System, Ratings, Device]:
    """A house whose only device of a kind of the spec language is of this one."""
    device = {"kind": kind, **NEEDED.get(kind, {})}
    data: dict[str, Any] = {
        "project": {"title": "House"},
        "site": {"temperature_min": -10, "temperature_max": 35},
        "supply": {"earthing_system": "TN-S", "prospective_fault_current": "6 kA", "loop_impedance": 0.3},
        "types": {
            "modules": {
                "m": {
                    "rated_power": "400 W", "open_circuit_voltage": "37 V", "short_circuit_current": "13 A",
                    "mpp_voltage": "31 V", "mpp_current": "12.5 A", "voltage_coefficient": "-0.26 %/K",
                }
            },
            "inverters": {
                "t": {
                    "rated_power": "5 kW", "phases": 3, "dc_voltage_max": "1000 V", "mpp_voltage_min": "200 V",
                    "mpp_voltage_max": "800 V",
                    "inputs": [{"current_max": "16 A", "short_circuit_current_max": "24 A"}],
                }
            },
        },
        "inverters": {
            "roof": {
                "type": "t",
                "circuit": [device] if side == "ac" else [],
                "inputs": [
                    {
                        "strings": [
                            {
                                "module": "m", "modules_in_series": 12, "count": 2,
                                "circuit": [device] if side == "string" else [],
                            }
                        ],
                        "circuit": [device] if side == "dc" else [],
                    }
                ],
            }
        },
    }  # fmt: skip
    if side == "battery":
        data["batteries"] = {
            "store": {
                "inverter": "roof",
                "voltage_max": "58 V",
                "current_max": "50 A",
                "dc_circuit": [device],
            }
        }
    if side == "data":
        data["data"] = {"devices": {"it": device}}
    system = build(Spec.model_validate(data))
    key = {
        "ac": "inverters.roof.circuit.0",
        "dc": "inverters.roof.inputs.0.circuit.0",
        "string": "inverters.roof.inputs.0.strings.0.each.0",
        "data": "data.devices.it",
        "battery": "batteries.store.dc_circuit.0",
    }[side]
    return system, rate(system), system.devices[key]


@EACH
def test_kind_has_letters_of_a_designation(side: str, kind: str) -> None:
    device = made(side, kind)[2]
    assert device.kind.name == kind
    assert re.search(rf"-{device.kind.letters}\d+(…\d+)?$", device.designation)


@EACH
def test_kind_has_a_symbol(side: str, kind: str) -> None:
    system, _, device = made(side, kind)
    assert symbol_of(device, system) in names()


@EACH
def test_kind_has_lines_on_the_drawing(side: str, kind: str) -> None:
    system, ratings, device = made(side, kind)
    lines = below(device, system, ratings) or (kind == "cable" and along(device, system, ratings))
    assert side == "data" or kind in ("diode", "fuse") or lines, "an inspector reads nothing off it"


def test_every_kind_has_a_word_of_its_own() -> None:
    words = {(side, kind): str(device_word(made(side, kind)[2])) for side, kind in CASES if kind != "cable"}
    assert all("_" not in word for word in words.values())
    shared = {word for word in words.values() if list(words.values()).count(word) > 1}
    assert shared == set()


@EACH
def test_apparatus_can_be_counted(side: str, kind: str) -> None:
    device = made(side, kind)[2]
    counted = [str(each) for each in device_counts([device] * 3)]
    assert counted == [] if side == "data" or kind == "cable" else counted[0].startswith("3 ")


@EACH
def test_kind_is_in_the_schedules(side: str, kind: str) -> None:
    if kind == "cable":  # which has a schedule of its own
        return
    system, ratings, device = made(side, kind)
    rows = {ENGLISH.say(row[0]): tuple(map(ENGLISH.say, row)) for row in equipment(system, ratings).rows}
    assert device.designation in rows
    assert rows[device.designation][1] == str(device_word(device))


@pytest.mark.parametrize(
    ("kinds", "types"), [(AC, AcDeviceType), ({**DC, **STRING}, DcDeviceType), (BATTERY, BatteryDeviceType)]
)
def test_kind_may_be_a_type(kinds: dict[str, type[Block]], types: Any) -> None:
    assert set(members(types)) == {block for block in kinds.values() if issubclass(block, Installed)}


def test_names_of_kinds_are_told_apart_by_their_side() -> None:
    assert len({(row.name, row.block) for row in KINDS}) == len(KINDS)


@pytest.mark.parametrize("row", [row for row in KINDS if row.forms], ids=lambda row: row.name)
def test_what_makes_a_form_is_a_value_of_the_block(row: Kind[Any]) -> None:
    for form in row.forms:
        assert row.block is not None
        field = row.block.model_fields[form.field]
        TypeAdapter(field.annotation).validate_python(form.value, strict=True)
        assert form.value != field.default, "the row itself says how a device looks by default"


def _accepted(annotation: Any) -> set[Any]:
    """What a value may be, without what pydantic is told besides."""
    if get_origin(annotation) is Annotated:
        return _accepted(get_args(annotation)[0])
    if get_origin(annotation) in (Union, UnionType):
        return {one for member in get_args(annotation) for one in _accepted(member)}
    return set(get_args(annotation)) if get_origin(annotation) is Literal else {annotation}


ROLES = {name: get_args(hint)[0] for name, hint in get_type_hints(role).items() if name in role.__all__}
"""What each role says that its devices have."""


@pytest.mark.parametrize("name", ROLES)
def test_every_block_with_a_role_has_its_fields(name: str) -> None:
    promised = {} if ROLES[name] is object else get_type_hints(ROLES[name])
    rows = [row for row in KINDS if getattr(role, name) in row.roles]
    assert rows, "no kind has this role"
    for row in rows:
        assert row.block is not None or not promised, row.name
        for field, wanted in promised.items():
            assert row.block is not None
            assert field in row.block.model_fields, f"{row.name} has no `{field}`"
            values, types = _accepted(get_type_hints(row.block)[field]), _accepted(wanted)
            assert all(value in types or type(value) in types for value in values), f"`{field}` of {row.name}"


@pytest.mark.parametrize(("side", "kind"), [case for case in CASES if case[1] != "cable"])
def test_kind_is_in_the_generated_specs(side: str, kind: str) -> None:
    """The specs for the ratings give each kind of a circuit values of its own; the others take them from the blocks."""
    if side == "data":
        assert f'"{kind}"' in (ROOT / "tests" / "properties" / "specs.py").read_text(encoding="utf-8")
        return
    _, ac, board, dc, string, battery = (
        (ROOT / "tests" / "steps" / "rated_specs.py").read_text(encoding="utf-8").split("_DEVICES = st.one_of(")
    )
    assert f'"kind": "{kind}"' in {"ac": ac + board, "dc": dc, "string": string, "battery": battery}[side]


NAME_SYMBOLS = (
    "model/kinds/ac.py",
    "model/kinds/dc.py",
    "model/kinds/battery.py",
    "model/kinds/units.py",
    "layout/diagram/symbol_of.py",
    "layout/diagram/chart.py",
    "layout/diagram/earth_bar.py",
    "layout/passes/data_wiring.py",
    "layout/parts/marks.py",
    "layout/parts/part_diagram.py",
    "documents/drawing/notes.py",
)
"""The modules that say which symbol is drawn."""


def _drawn_names() -> Iterator[str]:
    """Yield the texts of these modules that may name a symbol, formatted ones as a pattern."""
    for path in NAME_SYMBOLS:
        for text in re.findall(
            r'"([a-z][a-z0-9_]+(?:\{[^"]*\})?[a-z_]*)"', (PACKAGE / path).read_text(encoding="utf-8")
        ):
            yield re.sub(r"\{.*\}", "[a-z0-9_]+", text)


def test_every_symbol_is_drawn_for_something() -> None:
    patterns = set(_drawn_names())
    idle = {name for name in names() if not any(re.fullmatch(pattern, name) for pattern in patterns)}
    assert idle == set(IDLE)


MAY_ASK_FOR_A_BLOCK = {
    "spec": "it is made of blocks, and knows nothing of kinds",
    "model": "it makes devices of blocks",
}
"""Rooms that may tell blocks of the spec apart by their class, each with the reason."""


def _asked_for(module: Module) -> Iterator[str]:
    """Yield the blocks of the spec that a module asks for with `isinstance`."""
    blocks = {name.rsplit(".", 1)[-1] for name in module.imports if name.startswith("sld.spec.blocks.")}
    for call in ast.walk(module.tree):
        if isinstance(call, ast.Call) and isinstance(call.func, ast.Name) and call.func.id == "isinstance":
            names = (node.id for node in ast.walk(call.args[1]) if isinstance(node, ast.Name))
            yield from (f"{module.where}:{call.lineno}: {name}" for name in names if name in blocks)


def test_devices_are_asked_for_roles_and_kinds_not_for_their_blocks() -> None:
    asked = [(module.room, where) for module in modules() for where in _asked_for(module)]
    assert [where for room, where in asked if room not in MAY_ASK_FOR_A_BLOCK] == []
    assert {room for room, _ in asked} == set(MAY_ASK_FOR_A_BLOCK), "a room that need not ask is named"


def test_every_role_is_asked_for_or_has_a_reason() -> None:
    asked = {name for module in modules() for name in module.imports if name.startswith("sld.model.kinds.role.")}
    by_rooms = {
        name.rsplit(".", 1)[-1]
        for module in modules()
        if not module.name.startswith("sld.model.kinds")
        for name in module.imports
        if name in asked
    }
    assert set(ROLES) - by_rooms == set(NOT_ASKED_FOR)
