"""Source protected far from the service.

What it checks
    The length of the conductors between a connection ahead of the service disconnect and the first overcurrent device.

Why
    A fault on these conductors is fed by the whole network, and only the fuse ahead of the transformer ends it.

How
    The cables from the board with `source_connection: supply_side` to the first overcurrent device of a source are
    longer than 3 m in a dwelling, 5 m elsewhere.

Remedy
    An overcurrent device nearer to the connection.

Clause
    NEC 2020 and 2026 705.11(C), as
    https://courses.mayfield.energy/blog/2026-nec-705-11-c-supply-side-pv-connections tells it; the 2023 edition
    words it otherwise.

Not covered
    Conductors outside a building; up to 20 m under engineering supervision: accept the finding.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import Apparatus, Busbar, Cable
from sld.model.system import System
from sld.rules.compare import above, two
from sld.rules.naming import named
from sld.steps.ledger import Ratings
from sld.steps.protection import protective_family
from sld.words import phrase

_DWELLING_M, _ELSEWHERE_M = 3.0, 5.0


@rule("NE09", "source protected far from the service", Severity.NON_COMPLIANCE, "NEC 2020 705.11(C)")
def source_protected_far_from_the_service(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    limit_m = _DWELLING_M if system.site.building == "dwelling" else _ELSEWHERE_M
    for board in system.of(Busbar):
        if board.given.source_connection != "supply_side":
            continue
        for key in system.children.get(board.key, ()):
            cables = _unprotected(system, key)
            length_m = sum(cable.given.length_m for cable in cables)
            if not system.inverters_behind(key) or not above(length_m, limit_m):
                continue
            has, allowed = two(length_m, limit_m, "m")
            yield Breach(
                phrase(
                    "{cable} ahead of the service disconnect runs {has} to the first overcurrent device, more than "
                    "{allowed}",
                    cable=named(cables[0]),
                    has=has,
                    allowed=allowed,
                ),
                phrase("put an overcurrent device within {allowed} of the connection", allowed=allowed),
                (*cables[0].at, "length"),
                cables[0].key,
                (((*board.at, "source_connection"), phrase("how sources feed it")),),
            )


def _unprotected(system: System, key: str) -> list[Cable]:
    """Return the cables of a branch ahead of its first overcurrent device."""
    found = []
    for device in (system.devices[key], *system.downstream(key)):
        if isinstance(device, Apparatus) and protective_family(device):
            break
        if isinstance(device, Cable) and not device.dc:
            found.append(device)
    return found
