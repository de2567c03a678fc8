"""No earth electrode.

What it checks
    Whether a TT or IT installation has an earth electrode.

Why
    These systems have no protective conductor from the network; without an electrode nothing trips.

How
    earthing_system TT or IT and no electrode under earthing.

Remedy
    The electrode with its resistance.

Clause
    IEC 60364-4-41:2005+A1:2017 411.5, 411.6.

Not covered
    Electrodes of the network.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Finding, Severity, rule
from sld.model.system import System
from sld.steps.ledger import Ratings


@rule("EA05", "no earth electrode", Severity.NON_COMPLIANCE, "IEC 60364-4-41 411.5, 411.6")
def electrode_missing(system: System, ratings: Ratings) -> Iterator[Finding]:
    """Yield a finding for each case; see the text at the head of this file."""
    if system.supply.earthing_system in ("TT", "IT") and system.earthing.electrode is None:
        yield Finding(
            "EA05",
            Severity.NON_COMPLIANCE,
            f"earth terminal {system.earthing_designation} has no electrode given; "
            f"the earthing system is {system.supply.earthing_system}",
            "give `electrode` with its `resistance` under `earthing`",
            ("earthing", "electrode"),
            "earthing",
            ((("supply", "earthing_system"), "earthing system"),),
        )
