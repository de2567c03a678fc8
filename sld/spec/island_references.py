"""Names of what feeds a board while the network is away: backup outputs, and second sources of change-over switches."""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Finding, SpecPath
from sld.spec.blocks.changeover import Changeover
from sld.spec.document import Spec
from sld.spec.names import counted_names, told, unknown

__all__ = ["island_references", "second_sources"]


def second_sources(spec: Spec) -> Iterator[tuple[SpecPath, str]]:
    """Yield the place of each change-over switch in a board's circuit with the name of its second source."""
    for name, board in spec.boards.items():
        for position, device in enumerate(board.circuit or []):
            if isinstance(device, Changeover):
                yield ("boards", name, "circuit", position), device.second_source


def island_references(spec: Spec) -> Iterator[Finding]:
    """Yield a finding for each name of a source that is missing, of the wrong sort, or used twice."""
    yield from _backed_boards(spec)
    yield from _misplaced(spec)
    used: dict[str, SpecPath] = {}
    for path, source in second_sources(spec):
        here = (*path, "second_source")
        if source in used:
            also = ((used[source], "first named here"),)
            message = f"`{source}` is the second source of two change-over switches"
            yield told("SP55", here, message, "feed one board by it, and others from that board", also=also)
        used.setdefault(source, here)
        if source not in spec.generators:
            yield from _no_backup(spec, here, source)
    for name, generator in spec.generators.items():
        if name in used and generator.connected_to is not None:
            message = f"generator `{name}` is the second source of a change-over switch and is `connected_to` a board"
            remedy = "remove `connected_to`: it feeds the board behind the change-over switch"
            yield told("SP55", ("generators", name, "connected_to"), message, remedy)
        if name not in used and generator.changeover is None:
            message = f"nothing says how generator `{name}` is kept apart from the network"
            remedy = "name it as `second_source` of a `changeover` in a board's circuit, or describe it in `changeover`"
            yield told("SP55", ("generators", name), message, remedy, on_key=True)


def _backed_boards(spec: Spec) -> Iterator[Finding]:
    for name, board in spec.boards.items():
        if board.fed_from_backup is None:
            continue
        here = ("boards", name, "fed_from_backup")
        if board.fed_from is not None:
            message = f"board `{name}` is fed from a board and from a backup output"
            yield told("SP55", here, message, "keep one of `fed_from` and `fed_from_backup`")
        yield from _no_backup(spec, here, board.fed_from_backup)
        if _feeds_itself(spec, name):
            message = f"board `{name}` is fed by an inverter that is connected to it, or to a board that it feeds"
            yield told("SP54", here, message, "connect the inverter to a board that is nearer to the supply")


def _no_backup(spec: Spec, here: SpecPath, inverter: str) -> Iterator[Finding]:
    """Yield what is wrong with the name of an inverter that is to have a backup output."""
    names = counted_names(spec)
    of = {one: name for name, each in names.items() for one in each}
    if inverter not in of:
        if here[-1] == "second_source" and inverter in ("supply", *spec.further_supplies):
            message = f"`{inverter}` is a second connection to the network, and a board between two is not checked"
            remedy = "feed the board from one supply point; what a change-over between two asks for is left to you"
            yield told("SP58", here, message, remedy)
        elif inverter in names:
            remedy = f"name the one, for example `{names[inverter][0]}`"
            yield told("SP55", here, f"`{inverter}` stands for {len(names[inverter])} inverters", remedy)
        else:
            valid = [*of, *(spec.generators if here[-1] == "second_source" else ())]
            what = "generator or inverter" if here[-1] == "second_source" else "inverter"
            yield unknown(here, what, inverter, valid, "generators` and `inverters" if len(what) > 8 else "inverters")
        return
    type_ = spec.inverters[of[inverter]].type
    if type_ in spec.types.inverters and spec.types.inverters[type_].backup is None:
        message = f"inverter `{inverter}` has no backup output by its type `{type_}`"
        also = ((("types", "inverters", type_), "the type"),)
        yield told("SP53", here, message, "give `backup` in the inverter type, by its data sheet", also=also)


def _feeds_itself(spec: Spec, name: str) -> bool:
    """Return whether the way from a board towards the supply comes back to it through backup outputs."""
    of = {one: spec.inverters[key] for key, each in counted_names(spec).items() for one in each}
    main = next((key for key, board in spec.boards.items() if board.is_main), None)
    seen: set[str] = set()
    here: str | None = name
    while here is not None and here in spec.boards and here not in seen:
        seen.add(here)
        board = spec.boards[here]
        here = board.fed_from
        if board.fed_from_backup in of:
            here = of[board.fed_from_backup].connected_to or main
    return here in seen


def _misplaced(spec: Spec) -> Iterator[Finding]:
    """Yield a finding for each change-over switch that does not feed a board."""
    for group in ("inverters", "batteries", "loads", "generators"):
        for name, block in getattr(spec, group).items():
            for position, device in enumerate(getattr(block, "circuit", None) or []):
                if isinstance(device, Changeover):
                    message = "a change-over switch feeds a board, and this circuit serves none"
                    remedy = "put it into the `circuit` of the board that both sources feed"
                    yield told("SP55", (group, name, "circuit", position), message, remedy, on_key=True)
