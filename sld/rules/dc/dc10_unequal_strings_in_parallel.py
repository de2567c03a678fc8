"""Unequal strings in parallel.

What it checks
    Strings joined at one input, or at inputs that are linked: the number of modules in series and the type of the
    modules.

Why
    The string of higher voltage drives current backwards through the other; modules and connectors can overheat and
    burn, and power is lost.

How
    Every string is compared with the first one. Strings that optimisers hold at one fixed voltage may differ; one with
    optimisers beside one without may not.

Remedy
    The same number of the same modules in all strings of an input, or an input of its own.

Clause
    IEC 60364-7-712:2017 712.431.101 (number from memory).

Not covered
    Shade, dirt and the spread between modules of one type.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.system import System
from sld.rules.naming import named
from sld.steps.inputs import groups_behind, linked_inputs
from sld.steps.ledger import Ratings
from sld.steps.optimisers import optimiser_of
from sld.words import phrase


@rule("DC10", "unequal strings in parallel", Severity.DANGER, "IEC 60364-7-712 712.431.101")
def unequal_strings_in_parallel(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        linked = linked_inputs(system, terminal)
        if terminal != linked[0]:
            continue
        first, *others = [group for each in linked for group in groups_behind(system, each.key)]
        for other in others:
            units = (optimiser_of(system, first), optimiser_of(system, other))
            held_at = {each.string_voltage_v if each else None for each in units}
            if len(held_at) == 1 and None not in held_at:
                continue  # held at one voltage, whatever their modules
            if any(units) and not all(units):
                yield Breach(
                    phrase(
                        "{other} is in parallel with {first}, and one of them alone has power optimisers",
                        other=named(other),
                        first=first.designation,
                    ),
                    phrase("use an input of its own for each, or optimisers in both"),
                    (*other.at, "circuit"),
                    other.key,
                    (((*first.at, "circuit"), phrase("the string beside it")),),
                )
                continue
            here = (first.given.modules_in_series, first.type_name)
            there = (other.given.modules_in_series, other.type_name)
            if here == there:
                continue
            key = "modules_in_series" if here[0] != there[0] else "module"
            yield Breach(
                phrase(
                    "{other} with {there} modules `{there2}` in series is in parallel with {first} with {here} "
                    "modules `{here2}`",
                    other=named(other),
                    there=there[0],
                    there2=there[1],
                    first=first.designation,
                    here=here[0],
                    here2=here[1],
                ),
                phrase(
                    "use {here} modules `{here2}` in series in both, or an input of its own for each",
                    here=here[0],
                    here2=here[1],
                ),
                (*other.at, key),
                other.key,
                (((*first.at, key), phrase("the string beside it")),),
            )
