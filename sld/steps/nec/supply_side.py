"""Boards and meters: what a busbar with sources on it must stand, and the class of a meter."""

from __future__ import annotations

from sld.citation import from_memory
from sld.model.device import Busbar
from sld.model.kinds.ac import METER
from sld.model.system import System
from sld.quantity import Given, Rating
from sld.ratings.board import largest_source_breaker_120
from sld.ratings.nec import busbar
from sld.ratings.standard_value import smallest_standard
from sld.ratings.symbol import Symbol
from sld.steps.ledger import Ledger, Reason
from sld.steps.outgoing import outgoing_a
from sld.steps.protection import load_is_unknown, overcurrent_device
from sld.steps.supply_side import meter_ratings
from sld.steps.unanswered import UNKNOWN_CURRENT, WITHOUT_FUSE
from sld.words import Phrase, phrase

__all__ = ["supply_side"]

_NO_SETTING = phrase("the spec does not say what the power control system is set to")
_PANELS = "nec_panelboard_a"
_METERS = "nec_meter_a"


def supply_side(system: System, ledger: Ledger) -> None:
    """Rate every busbar and meter."""
    for board in system.of(Busbar):
        _board(system, ledger, board)
    for device, given in system.given_as(METER):
        meter_ratings(system, ledger, device, given, _self_contained_meter)


def _self_contained_meter(current_a: float) -> Rating | None:
    """Return the smallest class of self-contained meter for a current, None above the largest. [A]"""
    clause = from_memory(phrase("{standard}, meter classes", standard="ANSI C12.1"))
    return smallest_standard(
        Symbol.IMAX, _METERS, Given("Im", current_a, "A"), clause, phrase("smallest usual class ≥ Im")
    )


def _board(system: System, ledger: Ledger, board: Busbar) -> None:
    given_a = board.given.rated_current_a
    ledger.specified(board.key, Symbol.INA, given_a)
    needed = _least(system, ledger, board)
    if not isinstance(needed, Rating):
        if needed is not None:
            ledger.unanswered(board.key, Symbol.INA_LEAST if given_a is not None else Symbol.INA, needed)
        return
    ledger.add(board.key, needed)
    if given_a is not None or board.given.trunk:  # a trunk cable is no assembly of a usual rating
        return
    least = Given("InA,least", needed.value, "A")
    ledger.attempt(
        board.key,
        Symbol.INA,
        lambda: smallest_standard(Symbol.INA, _PANELS, least, needed.clause, phrase("smallest usual InA ≥ InA,least")),
        phrase("no usual board reaches {needed}", needed=needed),
    )


def _least(system: System, ledger: Ledger, board: Busbar) -> Rating | Reason | None:
    """Return what the busbar must stand, never less than the device that protects it, or why that cannot be told."""
    device = overcurrent_device(system, board.key)
    main_a = ledger.value(device.key, Symbol.IN) if device else None
    least = _by_sources(system, ledger, board, main_a)
    if main_a is None or not (least is None or isinstance(least, Rating)):
        return least
    return busbar.protected(main_a, least)


def _by_sources(system: System, ledger: Ledger, board: Busbar, main_a: float | None) -> Rating | Reason | None:
    """Return what the sources on a busbar ask of it; nothing where they are connected ahead of the service disconnect,
    for which 705.11 has no formula."""
    way = board.given.source_connection
    if way == "supply_side":
        return None
    if way == "power_control":
        setting_a = board.given.power_control_current_a
        return busbar.least_under_power_control(setting_a) if setting_a is not None else _NO_SETTING
    if way == "sum_of_devices":
        return _sum(system, ledger, board)
    if main_a is None:
        return WITHOUT_FUSE if load_is_unknown(system, ledger, board) else UNKNOWN_CURRENT
    exported_a = ledger.value(board.key, Symbol.IEXPORT)
    if board.given.trunk:
        return busbar.least_for_trunk(main_a, exported_a or 0.0)
    sources = [exported_a] if exported_a else []
    if way == "opposite_end":
        if board.given.rated_current_a is not None:
            ledger.add(board.key, largest_source_breaker_120(board.given.rated_current_a, main_a))
        least = busbar.least_at_opposite_end(main_a, sources)
        # without a source nothing is gained by an end
        return least if sources else busbar.least_at_any_position(main_a, sources)
    return busbar.least_at_any_position(main_a, sources)


def _sum(system: System, ledger: Ledger, board: Busbar) -> Rating | Reason:
    """Return the sum of the first devices of all circuits on a busbar, but that of the incoming one."""
    ratings_a = outgoing_a(system, ledger, board)
    if isinstance(ratings_a, Phrase):
        return ratings_a
    return busbar.least_for_sum_of_devices(ratings_a) if ratings_a else UNKNOWN_CURRENT
