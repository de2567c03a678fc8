"""Check digits of supply-point numbers: pure functions of the number without spaces and dots.

The weights of the MPAN, the letters of the CUPS and the GS1 rule are from memory; the MaLo rule and that of the NMI are
those of https://nordgroon.de (Marktlokation) and https://calcmates.com (NMI checksum).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

__all__ = ["CHECKS", "bare"]

_MPAN_WEIGHTS = (3, 5, 7, 13, 17, 19, 23, 29, 31, 37, 41, 43)
_CUPS_LETTERS = "TRWAGMYFPDXBNJZSQVHLCKE"


def bare(number: str) -> str:
    """Return a number without the spaces, dots and hyphens that people write between its parts."""
    return "".join(sign for sign in number if sign not in " .-\u00a0").upper()


def _mpan(number: str) -> bool:
    """Primes from 3 without 11 times the first twelve digits; the sum modulo 11 modulo 10 is the thirteenth."""
    total = sum(int(digit) * weight for digit, weight in zip(number[-13:-1], _MPAN_WEIGHTS, strict=True))
    return total % 11 % 10 == int(number[-1])


def _malo(number: str) -> bool:
    """Odd places once, even places twice; what is missing to the next ten is the eleventh."""
    if not number.isdecimal():
        return True  # the number of a metering location, which has none
    total = sum(int(digit) * (1 + place % 2) for place, digit in enumerate(number[:10]))
    return (10 - total % 10) % 10 == int(number[10])


def _cups(number: str) -> bool:
    """Sixteen digits modulo 529; quotient and remainder by 23 name the two letters."""
    rest = int(number[2:18]) % 529
    return number[18:20] == _CUPS_LETTERS[rest // 23] + _CUPS_LETTERS[rest % 23]


def _gs1(number: str) -> bool:
    """Weights 3 and 1 in turn from the right, before the check digit; what is missing to the next ten."""
    total = sum(int(digit) * (3 if place % 2 == 0 else 1) for place, digit in enumerate(reversed(number[:-1])))
    return (10 - total % 10) % 10 == int(number[-1])


def _nmi(number: str) -> bool:
    """Codes of the ten signs, every second doubled from the right; the digits of all added; to the next ten."""
    if len(number) < 11:
        return True  # written without it
    doubled = [ord(sign) * (2 if place % 2 == 0 else 1) for place, sign in enumerate(reversed(number[:10]))]
    total = sum(int(digit) for value in doubled for digit in str(value))
    return (10 - total % 10) % 10 == int(number[10])


CHECKS: Mapping[str, Callable[[str], bool]] = {"mpan": _mpan, "malo": _malo, "cups": _cups, "gs1": _gs1, "nmi": _nmi}
"""By the word of a country file: whether a number of the right form has the right check digit."""
