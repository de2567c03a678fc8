"""What an installation does by itself: feed-in limiters, and backup outputs with the boards behind them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from sld.documents.cell import Cell, answer, designated, given
from sld.documents.section import Column, Table
from sld.layout.diagram.ranges import joined
from sld.model.device import Busbar, DataNode, InverterUnit
from sld.model.system import System
from sld.spec.blocks.data_bus import FeedInLimit
from sld.words import NOTHING, Sayable, amount, phrase, verbatim

__all__ = ["backups", "feed_in_limiters"]


def feed_in_limiters(system: System) -> Table:
    """Return the feed-in limiters: by which meter, on what they act, and what they do without a measurement."""
    columns = (
        Column(phrase("Designation")),
        Column(phrase("Meter")),
        Column(phrase("Turns down"), 1.0),
        Column(phrase("Without its meter: after")),
        Column(phrase("down to")),
    )
    found = [(node.designation, node.given.feed_in_limit) for node in system.of(DataNode)]
    found += [(unit.designation, unit.given.feed_in_limit) for unit in system.of(InverterUnit)]
    rows = tuple(_limiter(system, designation, said) for designation, said in found if said is not None)
    return Table("feed_in_limiters", phrase("Feed-in limiters"), columns, rows)


def _limiter(system: System, designation: str, said: FeedInLimit) -> tuple[Cell, ...]:
    after, power_w = said.fail_safe_time_s, said.fail_safe_power_w
    return (
        designated(designation),
        _named(system, [said.sensor]),
        _named(system, said.inverters),
        answer("fail_safe", amount(after, "s", 4) if after is not None else None),
        given(amount(power_w / 1000, "kW", 4) if power_w is not None else NOTHING),
    )


def _named(system: System, names: Iterable[str]) -> Cell:
    return designated(joined(system.devices[key].designation for name in names for key in system.names[name]))


def backups(system: System) -> Table:
    """Return the backup outputs of inverters, each with the boards that it supplies."""
    columns = (
        Column(phrase("Designation")),
        Column(phrase("Backup output")),
        Column(phrase("Fault current")),
        Column(phrase("Supplies"), 1.0),
    )
    return Table("backups", phrase("Backup supply"), columns, tuple(_backups(system)))


def _backups(system: System) -> Iterator[tuple[Cell, ...]]:
    for unit in system.of(InverterUnit):
        output = unit.type.backup
        if output is not None:
            fault_a = output.short_circuit_current_a
            yield (
                designated(unit.designation),
                answer("backup", amount(output.power_va / 1000, "kVA", 4)),
                given(amount(fault_a, "A") if fault_a is not None else NOTHING),
                answer("backup.board", _supplied(system, unit)),
            )


def _supplied(system: System, unit: InverterUnit) -> Sayable | None:
    """Return the boards at the backup output of an inverter."""
    behind = [
        board.designation
        for board in system.of(Busbar)
        if board.given.fed_from_backup and unit.key in system.names[board.given.fed_from_backup]
    ]
    return verbatim(joined(behind)) if behind else None
