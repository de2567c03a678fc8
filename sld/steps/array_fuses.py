"""Fuses of sub-arrays and arrays: whether what is joined behind an inverter, or the inverter itself, asks for them."""

from __future__ import annotations

from sld.citation import clause_from_memory
from sld.model.device import InputTerminal
from sld.model.system import System
from sld.ratings import string_fuse
from sld.ratings.symbol import Symbol, Word
from sld.steps.inputs import joined_inputs
from sld.steps.ledger import NOT_NEEDED, OF_ARRAY, OF_SUB_ARRAY, Ledger
from sld.tables.profiles import profile

__all__ = ["array_fuses"]

_UNFUSED_SUB_ARRAYS = 2
_CLAUSE = clause_from_memory("IEC 62548:2016 6.5")


def array_fuses(system: System, ledger: Ledger) -> None:
    """Keep, for every input, whether its strings together need a fuse of their own, and its window.

    A sub-array needs one where more than two are joined at one inverter, an array where the inverter can feed back.
    """
    for terminal in system.of(InputTerminal):
        joined = len(joined_inputs(system, terminal))
        why = None
        if joined > _UNFUSED_SUB_ARRAYS:
            why = OF_SUB_ARRAY
        elif system.inverter_of(terminal).type.backfeed_current_a > 0:
            why = OF_ARRAY
        ledger.word(terminal.key, Word.ARRAY_FUSE, why or NOT_NEEDED, _CLAUSE)
        isc = ledger.get(terminal.key, Symbol.ISC)
        if not why or isc is None:
            continue
        rules = profile(system.profile)
        window = string_fuse.array_window(isc.value, rules)
        ledger.add(terminal.key, window.lower, symbol=Symbol.IN_ARRAY_MIN)
        if rules.array_fuse_upper_factor.is_set:
            ledger.add(terminal.key, window.upper, symbol=Symbol.IN_ARRAY_MAX)
        chosen = string_fuse.smallest_rating(window, series_name=rules.dc_fuse_series.text)
        ledger.add(terminal.key, chosen, symbol=Symbol.IN_ARRAY)
