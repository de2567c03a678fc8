"""Circuits: the apparatus and cables between a board and what it feeds, or between strings and their inverter."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, TypeVar

from sld.finding import SpecPath
from sld.frozen import dataclass
from sld.model.device import Apparatus, Cable
from sld.model.draft import Draft
from sld.model.kinds.role import AT_BATTERY
from sld.model.kinds.table import circuit_kind
from sld.spec.blocks.battery_circuit import BatteryCable, BatteryDevice
from sld.spec.blocks.block import Block, Placed
from sld.spec.blocks.circuit import (
    AcCable,
    AcDevice,
    AcSurgeProtection,
    CableType,
    DcCable,
    DcDevice,
    DcSurgeProtection,
    Installed,
    Isolator,
)
from sld.spec.document import follows_nec
from sld.words import Phrase, phrase

__all__ = ["Place", "Run", "ac_circuit", "add_device", "first_to_last", "placed_fields"]

AnyBlock = TypeVar("AnyBlock", bound=Block)

_AC_CABLE = CableType(marking="Cu/PVC", conductor="copper", insulation="PVC")
_PV_WIRE = CableType.model_validate({"marking": "PV wire", "insulation": "XLPE", "temperature_rating": 90.0})
_BUILDING_WIRE = CableType.model_validate({"marking": "THWN", "insulation": "PVC", "temperature_rating": 75.0})
_BATTERY_CABLE = CableType.model_validate({"marking": "Cu/PVC", "strands": "class 5"})
_DC_CABLE = CableType.model_validate({"marking": "H1Z2Z2-K", "insulation": "EN 50618", "rated_voltage": 1500.0})


@dataclass(frozen=True, slots=True)
class Run:
    """What the devices of one circuit have in common.

    owner: key of what the circuit serves. dc: on the DC side. count: how many alike each device stands for. assumed:
    the spec does not mention the circuit. status: of what it serves.
    """

    owner: str
    dc: bool = False
    count: int = 1
    assumed: bool = False
    status: str = "new"


def merged(block: AnyBlock, type_block: AnyBlock | None) -> AnyBlock:
    """Return the block with the values of its type where it gives none itself."""
    if type_block is None:
        return block
    own = block.model_fields_set
    added = {name: getattr(type_block, name) for name in type_block.model_fields_set if name not in own}
    return block.model_copy(update=added)


def placed_fields(block: Placed, make: str = "", model: str = "") -> dict[str, Any]:
    """Return the fields that a device takes over from its block as they are."""
    return {
        "name": block.name or "",
        "location": block.location or "",
        "status": block.status,
        "make": block.make or make,
        "model": block.model or model,
        "note": block.note or "",
    }


def first_to_last(designations: Sequence[str]) -> str:
    """Write several designations of one owner briefly: `-TB1-GC1…4`."""
    first, last = designations[0], designations[-1]
    if first == last:
        return first
    return f"{first}…{last.removeprefix(last.rstrip('0123456789'))}"


@dataclass(frozen=True, slots=True)
class Place:
    """Where a device goes in the tree: its key, where the spec gives it, the key it hangs on, that of its enclosure."""

    key: str
    at: SpecPath
    parent: str
    enclosure: str = ""


def ac_circuit(
    draft: Draft, circuit: Sequence[AcDevice], parent: str, path: SpecPath, run: Run, enclosures: tuple[str, str]
) -> str:
    """Add the devices of an AC circuit and return the key of the last, or `parent` where there is none.

    enclosures: those before the first cable sit in the first one, those after the last cable in the second. Without a
    cable all sit in the first one, but for the isolator of a unit, which is beside it.
    """
    before, after = enclosures
    cables = [position for position, device in enumerate(circuit) if isinstance(device, AcCable)]
    serves_board = run.owner.startswith("boards.")
    for position, device in enumerate(circuit):
        if cables:
            enclosure = before if position < cables[0] else after if position > cables[-1] else ""
        else:
            enclosure = "" if isinstance(device, Isolator) and not serves_board else before
        if isinstance(device, Installed) and device.enclosure:
            enclosure = f"boards.{device.enclosure}"
        at = path if run.assumed else (*path, "circuit", position)
        place = Place(f"{run.owner}.circuit.{position}", at, parent, enclosure)
        parent = add_device(draft, device, place, run)
    return parent


def add_device(
    draft: Draft,
    block: AcDevice | DcDevice | BatteryDevice,
    place: Place,
    run: Run,
) -> str:
    """Add one apparatus or cable, its type filled in, and return its key."""
    group, _, name = run.owner.partition(".")
    prefix = draft.owners[group, name]
    kind = circuit_kind(block)
    designations = [draft.designator.next(prefix, kind) for _ in range(run.count)]
    common: dict[str, Any] = {
        "key": place.key,
        "designation": block.designation or first_to_last(designations),
        "kind": kind,
        "at": place.at,
        "parent": place.parent,
        "owner": run.owner,
        "dc": run.dc,
        "enclosure": place.enclosure,
        "assumed": run.assumed,
        "count": run.count,
    }
    if isinstance(block, AcCable | DcCable | BatteryCable):
        return draft.add(_cable(draft, block, common))
    types = draft.spec.types
    known: dict[str, Any] = dict(types.dc_devices if run.dc else types.ac_devices)
    if kind.has(AT_BATTERY, block):
        known = dict(types.battery_devices)
    given = merged(block, known.get(block.type) if block.type else None)
    if isinstance(given, AcSurgeProtection | DcSurgeProtection) and "test_class" not in given.model_fields_set:
        draft.assume(place.at, place.key, phrase("type 2"), phrase("give its `test_class`"))
    fields = placed_fields(given, model=block.type or "")
    if run.assumed:
        # planned with what it serves; but nobody said that it is there already, whatever it serves
        fields["status"] = "future" if run.status == "future" else "new"
    return draft.add(Apparatus(given=given, **common, **fields))


def _usual_type(draft: Draft, dc: bool) -> tuple[CableType, Phrase]:
    """Return the type of a cable that names none, and what is said about it."""
    if follows_nec(draft.spec.profile):
        if dc:
            return _PV_WIRE, phrase("PV wire of copper with 90 °C insulation")
        return _BUILDING_WIRE, phrase("copper conductors with 75 °C insulation")
    if dc:
        return _DC_CABLE, phrase("solar cable to EN 50618")
    return _AC_CABLE, phrase("copper cable with PVC insulation")


def _cable(draft: Draft, block: AcCable | DcCable | BatteryCable, common: dict[str, Any]) -> Cable:
    if block.type is not None:
        type_block = draft.spec.types.cables[block.type]
    else:
        type_block, what = _usual_type(draft, common["dc"])
        if isinstance(block, BatteryCable):
            type_block, what = _BATTERY_CABLE, phrase("flexible copper conductors with PVC insulation at the battery")
        draft.assume(common["at"], common["key"], what, phrase("name a cable `type`"))
    marking = type_block.marking or block.type or ""
    return Cable(given=block, type=type_block, marking=marking, **common, **placed_fields(block))
