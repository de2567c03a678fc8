"""How the current of a line was come by, as a clerk can follow it: `9000 / (3 × 230) = 13.04 A`."""

from __future__ import annotations

from sld.quantity import Rating
from sld.words import Phrase, amount, phrase

__all__ = ["arithmetic"]

_DIGITS = 4
_ALL_DIGITS = 8


def arithmetic(current: Rating) -> Phrase:
    """Return the computation of the current of the most loaded line with its numbers put in."""
    inputs = {given.name: given.number for given in current.given}
    result = amount(current.value, "A", _DIGITS)
    three_va, one_va, to_neutral_v = inputs.get("S3"), inputs.get("S1"), inputs.get("U0", 0.0)
    voltage = amount(to_neutral_v, "", _ALL_DIGITS)
    if three_va is not None and one_va is not None:
        return phrase(
            "{power} three-phase and {one} on one line: {power_va} / (3 × {voltage}) + {one_va} / {voltage} = {result} "
            "a line",
            power=amount(three_va / 1000, "kVA", _DIGITS),
            one=amount(one_va / 1000, "kVA", _DIGITS),
            power_va=amount(three_va, "", _ALL_DIGITS),
            one_va=amount(one_va, "", _ALL_DIGITS),
            voltage=voltage,
            result=result,
        )
    if three_va is not None:
        return phrase(
            "{power} three-phase: {power_va} / (3 × {voltage}) = {result} a line",
            power=amount(three_va / 1000, "kVA", _DIGITS),
            power_va=amount(three_va, "", _ALL_DIGITS),
            voltage=voltage,
            result=result,
        )
    if one_va is not None:
        return phrase(
            "{power} on one line: {power_va} / {voltage} = {result} a line",
            power=amount(one_va / 1000, "kVA", _DIGITS),
            power_va=amount(one_va, "", _ALL_DIGITS),
            voltage=voltage,
            result=result,
        )
    return phrase("units between lines, summed as phasors: {result} a line", result=result)
