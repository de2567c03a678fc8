"""Protective conductor too small for the leakage.

What it checks
    The protective conductor of a cable whose inverters leak more than 10 mA in operation.

Why
    If this conductor breaks, the leakage current flows through whoever touches the housing.

How
    SPE < SPE,leak: 10 mm² copper or 16 mm² aluminium where the declared leakage current is above 10 mA. Advice where
    `protective_section` is left out and the one chosen for the leakage is larger than the given cores.

Remedy
    The larger section, or a second protective conductor; then accept the finding with it.

Clause
    IEC 60364-5-54:2011 543.7 (from memory); IEC 62109-1 7.3.6 (from memory).

Not covered
    A second protective conductor: the spec has no word for it.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.quantity import shown
from sld.ratings.symbol import Symbol
from sld.rules.compare import above, shortfalls, two
from sld.rules.naming import named
from sld.rules.ways import ac_cables
from sld.steps.ledger import Ratings
from sld.words import amount, phrase


@rule(
    "EA07",
    "protective conductor too small for the leakage",
    Severity.NON_COMPLIANCE,
    "IEC 60364-5-54:2011 543.7 (from memory)",
)
def protective_conductor_for_leakage(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for cable, section, least in shortfalls(ratings, ac_cables(system), Symbol.SPE, Symbol.SPE_LEAK):
        has, needs = two(section.value, least.value, "mm²")
        leakage = shown(least.number("Ileak"))
        yield Breach(
            phrase(
                "{cable} has a protective conductor of {has}, below the {needs} for {leakage} mA leakage",
                cable=named(cable),
                has=has,
                needs=needs,
                leakage=leakage,
            ),
            phrase("use a protective conductor of {needs}, or lay a second one and accept this", needs=needs),
            (*cable.at, "protective_section"),
            cable.key,
            (),
            (section, least),
        )
    for cable, given in system.ac_cables():
        if given.protective_section_mm2 is not None or given.section_mm2 is None:
            continue
        chosen, leak = ratings.get(cable.key, Symbol.SPE), ratings.get(cable.key, Symbol.SPE_LEAK)
        if chosen is not None and leak is not None and above(chosen.value, given.section_mm2):
            core, needs = two(given.section_mm2, chosen.value, "mm²")
            yield Breach(
                phrase(
                    "{cable} has cores of {core}; a protective conductor of {needs} beside it is taken for the "
                    "{number} leakage",
                    cable=named(cable),
                    core=core,
                    needs=needs,
                    number=amount(leak.number("Ileak"), "mA"),
                ),
                phrase("use cores of {needs}, or give `protective_section` as it is laid", needs=needs),
                (*cable.at, "section"),
                cable.key,
                (),
                (chosen, leak),
                severity=Severity.ADVICE,
            )
