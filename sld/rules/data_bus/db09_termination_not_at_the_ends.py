"""Termination not at the two ends.

What it checks
    Where the terminating resistors of a chain are on.

Why
    An open end reflects the signal, and a resistor in the middle loads the drivers; messages are lost.

How
    Exactly the first and the last device are terminated. Where the spec says nothing of termination, this is
    advice.

Remedy
    terminated: true at the first and the last device only.

Clause
    TIA-485-A; application notes of bus makers.

Not covered
    The value of the resistors (120 Ω as a rule).
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.system import System
from sld.steps.ledger import Ratings
from sld.words import phrase


@rule("DB09", "termination not at the two ends", Severity.NON_COMPLIANCE, "TIA-485-A", once=True)
def termination_not_at_the_ends(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for chain in system.chains:
        on = [node for node in chain.nodes if node.terminated]
        ends = (chain.nodes[0], chain.nodes[-1])
        if len(on) == len(ends) and all(node is end for node, end in zip(on, ends, strict=True)):
            continue
        first, last = (system.devices[end.device].designation for end in ends)
        remedy = phrase("set `terminated: true` at the first and the last device of the chain, and nowhere else")
        at = (*chain.at, "devices")
        if not on:
            yield Breach(
                phrase(
                    "data chain {chain} states no termination at its ends {first} and {last}",
                    chain=chain.designation,
                    first=first,
                    last=last,
                ),
                remedy,
                at,
                chain.key,
                severity=Severity.ADVICE,
            )
            continue
        where = ", ".join(system.devices[node.device].designation for node in on)
        yield Breach(
            phrase(
                "data chain {chain} is terminated at {where} and not just at its ends {first} and {last}",
                chain=chain.designation,
                where=where,
                first=first,
                last=last,
            ),
            remedy,
            at,
            chain.key,
        )
