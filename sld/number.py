"""The one way a number is rounded and written, before any language has a say in it."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Context, Decimal
from functools import lru_cache
from math import isfinite, isnan

__all__ = ["SIGNIFICANT_DIGITS", "digits_to_tell_apart", "pair", "shown"]

SIGNIFICANT_DIGITS = 3
_LONGEST = 12
"""Characters of a number on paper: cells and labels are measured for them."""


@lru_cache(maxsize=4096)
def shown(value: float, digits: int = SIGNIFICANT_DIGITS) -> str:
    """Write a number: `digits` significant ones, every digit before the point kept, halves away from zero.

    No text is longer than 12 characters: what does not fit loses digits, down to three, and is then written with a
    power of ten, 1.5e28. This is the only rounding in the project; nothing is rounded before it is written.
    """
    if not isfinite(value):
        return "undefined" if isnan(value) else "∞" if value > 0 else "-∞"
    exact = Decimal(repr(float(value)))
    if exact == 0:
        return "0"
    for kept in range(digits, min(digits, SIGNIFICANT_DIGITS) - 1, -1):
        if -_LONGEST < exact.adjusted() < _LONGEST and len(text := _plain(exact, kept)) <= _LONGEST:
            return text
    kept = min(digits, _LONGEST - len("-.e-308"))
    mantissa, power = f"{Context(prec=kept, rounding=ROUND_HALF_UP).plus(exact):e}".split("e")
    return f"{_without_zeros(mantissa)}e{int(power)}"


def _plain(exact: Decimal, digits: int) -> str:
    """Write a number without a power of ten."""
    decimals = max(0, digits - 1 - exact.adjusted())
    return _without_zeros(f"{exact.quantize(Decimal(1).scaleb(-decimals), rounding=ROUND_HALF_UP):f}")


def _without_zeros(text: str) -> str:
    return text.rstrip("0").rstrip(".") if "." in text else text


def digits_to_tell_apart(left: float, right: float) -> int:
    """Return how many significant digits it takes to tell two numbers apart (1000.4 against 1000: 5)."""
    for digits in range(SIGNIFICANT_DIGITS, 12):
        if left == right or shown(left, digits) != shown(right, digits):
            return digits
    return 15


def pair(left: float, right: float) -> tuple[str, str]:
    """Write two compared numbers with as many digits as it takes to tell them apart."""
    digits = digits_to_tell_apart(left, right)
    return shown(left, digits), shown(right, digits)
