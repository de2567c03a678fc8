"""Fuse of a sub-array or array missing.

What it checks
    Inputs whose strings together need overcurrent protection, and whether a fuse is in the circuit of the input.

Why
    Into a fault of one sub-array flows the current of all others, into a fault of the array what the inverter feeds
    back. Nothing but a fuse cuts it off.

How
    More than two inputs are joined behind the inverter (linked, or not independent), or the inverter declares a
    backfeed current; and the circuit of the input has no fuse.

Remedy
    A fuse in the circuit of each such input, in the range In,array,min to In,array,max.

Clause
    IEC 62548:2016 6.5, sub-arrays and arrays (from memory).

Not covered
    Protection built into the inverter; accept the finding with that reason.
"""

from __future__ import annotations

from collections.abc import Iterator

from sld.finding import Breach, Severity, rule
from sld.model.device import InputTerminal
from sld.model.kinds.role import OVERCURRENT_PROTECTION
from sld.model.system import System
from sld.quantity import Rating
from sld.ratings.symbol import Symbol, Word
from sld.rules.naming import named
from sld.rules.ways import devices_of_input
from sld.steps.dc_devices import protects_array
from sld.steps.inputs import joined_inputs
from sld.steps.ledger import NOT_NEEDED, OF_SUB_ARRAY, Ratings
from sld.words import amount, phrase


@rule("DC35", "fuse of a sub-array or array missing", Severity.NON_COMPLIANCE, "IEC 62548-1 6.5")
def array_fuse_missing(system: System, ratings: Ratings) -> Iterator[Breach]:
    """Yield a finding for each case; see the text at the head of this file."""
    for terminal in system.of(InputTerminal):
        needed = ratings.told(terminal.key, Word.ARRAY_FUSE)
        fuses = [each for each in devices_of_input(system, terminal, OVERCURRENT_PROTECTION) if protects_array(each)]
        if needed in (None, NOT_NEEDED) or fuses:
            continue
        unit = system.inverter_of(terminal)
        if needed == OF_SUB_ARRAY:
            why = phrase(
                "one of {count} sub-arrays that can feed into each other", count=len(joined_inputs(system, terminal))
            )
            source = (
                ("types", "inverters", unit.type_name, "inputs_independent"),
                phrase("independence of the inputs"),
            )
        else:
            why = phrase(
                "fed back into with up to {backfeed_current} by the inverter",
                backfeed_current=amount(unit.type.backfeed_current_a, "A"),
            )
            source = (("types", "inverters", unit.type_name, "backfeed_current"), phrase("backfeed of the inverter"))
        size: Rating | None = ratings.get(terminal.key, Symbol.IN_ARRAY)
        yield Breach(
            phrase("{terminal} is {why} and has no fuse", terminal=named(terminal), why=why),
            phrase("add a `fuse` of {size} gPV to the `circuit` of the input", size=size)
            if size
            else phrase("add a `fuse` to the `circuit` of the input"),
            (*terminal.at, "circuit"),
            terminal.key,
            (source,),
            (size,) if size else (),
        )
