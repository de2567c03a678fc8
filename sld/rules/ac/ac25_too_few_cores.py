"""Too few cores in a cable.

What it checks
    The stated number of cores of each AC cable against the conductors of its circuit.

Why
    Without a core for the protective conductor the housing of what the cable serves is not earthed, and a fault makes
    it live; without one for the neutral the lines float against it.

How
    cores below one for each line, the neutral and the protective conductor. Danger where no core is left for the
    protective conductor; non-compliance where only the neutral lacks, in the circuit of a board, with a four-pole
    device or for an inverter that takes one (needs_neutral); advice for the four cores of a three-phase unit of which
    it is not known.

Remedy
    A cable with more cores, or `protective_section` where that conductor lies around or beside the cores.

Clause
    IEC 60364-1 312.2; IEC 60364-4-41:2005 411.3.1.1; IEC 60364-5-54 543.1 (numbers from memory).

Not covered
    Cables between network and main board bring no protective
    conductor in TT and IT; in TN-C-S their PEN counts for both.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.conductors import has_neutral, phases
from sld.model.system import System
from sld.ratings.symbol import Symbol
from sld.rules.compare import shortfalls
from sld.rules.naming import named
from sld.rules.ways import ac_cables
from sld.steps.cable_conductors import brings_protective, holds_protective
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("AC25", "too few cores in a cable", Severity.DANGER, "IEC 60364-1 312.2; IEC 60364-4-41 411.3.1.1")
def too_few_cores(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable, has, needs in shortfalls(ratings, ac_cables(system), Symbol.CORES, Symbol.CORES_MIN):
        count, least = int(has.value), int(needs.value)
        conductors = str(needs.input("conductors"))
        text = phrase(
            "{cable} has {count} cores for the {least} conductors {conductors}",
            cable=named(cable),
            count=count,
            least=least,
            conductors=conductors,
        )
        unprotected = brings_protective(system, cable) and not holds_protective(system, cable)
        yield Breach(
            phrase("{what}: no protective conductor", what=text) if unprotected else text,
            phrase(
                "use a cable of {least} cores, or give `protective_section` for a conductor beside its cores",
                least=least,
            ),
            (*cable.at, "cores"),
            cable.key,
            (),
            (has, needs),
            severity=Severity.DANGER if unprotected else Severity.NON_COMPLIANCE,
        )
    for cable in ac_cables(system):
        has_cores, least_cores = ratings.get(cable.key, Symbol.CORES), ratings.get(cable.key, Symbol.CORES_MIN)
        if has_cores is None or least_cores is None:
            continue
        if phases(system, cable.owner) == 1 or not has_neutral(system, cable.owner):
            continue
        if has_cores.value == least_cores.value and not {"N", "PEN"} & set(
            str(least_cores.input("conductors")).split()
        ):
            yield Breach(
                phrase(
                    "{cable} has {has_cores} cores and none of them for a neutral",
                    cable=named(cable),
                    has_cores=int(has_cores.value),
                ),
                phrase("check in the data sheet of what it serves that it needs no neutral, or use a core more"),
                (*cable.at, "cores"),
                cable.key,
                severity=Severity.ADVICE,
            )
