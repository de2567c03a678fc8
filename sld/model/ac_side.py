"""The AC side of the tree: the public network, the boards, and all that each board feeds."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from sld.finding import SpecPath
from sld.model.ac_neighbours import GIVE_CIRCUIT, add_generator, add_neighbours
from sld.model.circuit import Run, ac_circuit, placed_fields
from sld.model.dc_side import inputs_and_battery
from sld.model.device import (
    Apparatus,
    Busbar,
    InverterUnit,
    Network,
    Transformer,
)
from sld.model.draft import Draft
from sld.model.equal import add_all
from sld.model.kinds.ac import SERVICE_FUSE
from sld.model.kinds.units import (
    BOARD,
    INVERTER,
    NETWORK,
    TRANSFORMER,
    TRUNK,
)
from sld.spec.blocks.changeover import Changeover
from sld.spec.blocks.circuit import AcCable, AcDevice, Breaker, Fuse, InterfaceProtection, Isolator, MainSwitch, Meter
from sld.spec.blocks.interface_relay import InterfaceRelay
from sld.words import phrase

__all__ = ["add_boards", "add_network"]


def add_network(draft: Draft) -> str:
    """Add the public network with the site's transformer and service fuse, and return the key of the last."""
    supply, designator = draft.spec.supply, draft.designator
    prefix, place = draft.point.prefix, draft.point.place
    key = draft.add(
        Network(
            key=f"{prefix}supply",
            designation=designator.next("", NETWORK),
            kind=NETWORK,
            at=place(("supply",)),
            given=supply,
            name=", ".join(filter(None, (draft.point.called, supply.operator))),
            status="existing",
        )
    )
    if supply.transformer:
        key = draft.add(
            Transformer(
                key=f"{prefix}supply.transformer",
                designation=designator.next("", TRANSFORMER),
                kind=TRANSFORMER,
                at=place(("supply", "transformer")),
                parent=key,
                status=supply.transformer.status,
            )
        )
    if supply.service_fuse_a is not None:
        key = draft.add(
            Apparatus(
                key=f"{prefix}supply.service_fuse",
                designation=designator.next("", SERVICE_FUSE),
                kind=SERVICE_FUSE,
                at=place(("supply", "service_fuse")),
                parent=key,
                given=Fuse.model_validate({"kind": "fuse", "rated_current": supply.service_fuse_a}),
                status=supply.service_fuse_status,
            )
        )
    return key


def add_boards(draft: Draft, parent: str) -> None:
    """Add every board with all that it feeds: first the boards below it, then its inverters, batteries and loads.

    Kept as a list of what is still to do, so that a long row of boards is no deeper than a short one.
    """
    open_boards = [(draft.main, parent, False)]
    while open_boards:
        name, key, is_added = open_boards.pop()
        if is_added:
            backed = _add_inverters(draft, name, key)
            add_neighbours(draft, name, key)
            open_boards += [(sub, unit, False) for sub, unit in reversed(backed)]
            continue
        busbar = _add_board(draft, name, key)
        open_boards.append((name, busbar, True))
        below = [sub for sub, board in draft.boards.items() if board.fed_from == name]
        open_boards += [(sub, busbar, False) for sub in reversed(below)]


def _add_board(draft: Draft, name: str, parent: str) -> str:
    """Add the incoming circuit and the busbar of a board and return the busbar's key."""
    board = draft.boards[name]
    path: SpecPath = ("boards", name) if draft.spec.boards else ("boards",)
    key = f"boards.{name}"
    circuit = board.circuit if board.circuit is not None else _usual_incomer(draft, name, path, key)
    before = f"boards.{board.fed_from}" if board.fed_from else ""
    after = key if before or board.fed_from_backup or not any(isinstance(device, AcCable) for device in circuit) else ""
    if board.trunk:
        after = ""
    run = Run(key, assumed=board.circuit is None, status=board.status)
    last = ac_circuit(draft, circuit, parent, path, run, (before or after, "" if board.trunk else key))
    busbar = draft.add(
        Busbar(
            key=key,
            designation=draft.owners["boards", name],
            kind=TRUNK if board.trunk else BOARD,
            at=path,
            parent=last,
            owner=key,
            enclosure="" if board.trunk else key,
            given=board,
            assumed=not draft.spec.boards,
            **placed_fields(board),
        )
    )
    for position, device in enumerate(circuit):
        if isinstance(device, Changeover) and device.second_source in draft.spec.generators:
            switch = draft.devices[f"{key}.circuit.{position}"]
            add_generator(draft, device.second_source, switch.key, switch.enclosure)
    return busbar


def _usual_incomer(draft: Draft, name: str, path: SpecPath, key: str) -> list[AcDevice]:
    """Return the incoming circuit of a board that gives none, and say so."""
    if name == draft.main:
        draft.assume(
            path, key, phrase("an energy meter and a main switch at board `{board}`", board=name), GIVE_CIRCUIT
        )
        return [Meter(kind="meter", purpose="supply"), MainSwitch(kind="main_switch")]
    draft.assume(path, key, phrase("a circuit-breaker at board `{board}`", board=name), GIVE_CIRCUIT)
    return [Breaker(kind="breaker")]


def _add_inverters(draft: Draft, board: str, key: str) -> list[tuple[str, str]]:
    """Add the inverters of a board; return the boards at their backup outputs, each with the key of its inverter."""
    backed = []
    for name, inverter in draft.spec.inverters.items():
        if (inverter.connected_to or draft.main) == board:
            names = draft.inverters[name]
            add_all(draft, names, partial(_add_inverter, draft, name, key))
            fed = [(sub, b.fed_from_backup) for sub, b in draft.boards.items() if b.fed_from_backup in names]
            backed += [(sub, f"inverters.{one}") for one in names for sub, by in fed if by == one]
    return backed


def _add_inverter(draft: Draft, block: str, board: str, name: str, copy: int) -> None:
    """Add one inverter with its circuit and its DC side. block: its name in the spec. name: its own, with a number."""
    path, inverter = ("inverters", block), draft.spec.inverters[block]
    key = f"inverters.{name}"
    circuit: Sequence[AcDevice] | None = inverter.circuit
    if circuit is None:
        circuit = [Breaker(kind="breaker"), Isolator(kind="isolator")]
        what = phrase("a circuit-breaker and an isolator for inverter `{inverter}`", inverter=name)
        draft.assume(path, key, what, GIVE_CIRCUIT)
    before = "" if draft.boards[board.removeprefix("boards.")].trunk else board
    parent = ac_circuit(
        draft, circuit, board, path, Run(key, assumed=inverter.circuit is None, status=inverter.status), (before, "")
    )
    type_block = draft.spec.types.inverters[inverter.type]
    if "interface_protection" not in type_block.model_fields_set and not _protects_the_interface(draft):
        what = phrase("interface protection is built into inverter type `{type}`", type=inverter.type)
        draft.assume(path, key, what, phrase("give `interface_protection` in the inverter type"))
    unit = InverterUnit(
        key=key,
        designation=draft.owners["inverters", name],
        kind=INVERTER,
        at=path,
        parent=parent,
        owner=key,
        given=inverter,
        type=type_block,
        type_name=inverter.type,
        copy=copy,
        **placed_fields(inverter, make=type_block.make or "", model=type_block.model or inverter.type),
    )
    draft.add(unit)
    inputs_and_battery(draft, unit, block)


def _protects_the_interface(draft: Draft) -> bool:
    """Return whether a circuit of the spec has interface protection of its own."""
    circuits = [board.circuit for board in draft.boards.values()]
    circuits += [inverter.circuit for inverter in draft.spec.inverters.values()]
    return any(
        isinstance(device, InterfaceProtection | InterfaceRelay) for circuit in circuits for device in circuit or []
    )
