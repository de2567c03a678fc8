"""Reference designations after IEC 81346, stable when something else is added.

A designation is that of the owner of a circuit followed by the device's own: `-TB3-FC1` is the first protective device
of the circuit that serves inverter 3. Counters run within one owner, so a new device never renumbers another owner's.
Class letters stand with the kinds (`sld/model/kinds`); with one letter, `-T3-F1`.
"""

from __future__ import annotations

import re
from collections import Counter
from typing import Any

from sld.model.kinds.row import Kind

__all__ = ["Designator", "numbers"]


def numbers(names: list[str]) -> list[int]:
    """Return a number for each name: the digits it ends in, else, or where those are taken, the smallest that is free.

    `inv1, inv3, hall` gives 1, 3, 2. Names are taken in order, so one added at the end never renumbers the others.
    """
    found: dict[int, None] = {}
    free = 1
    for name in names:
        match = re.search(r"(?<!\d)\d{1,2}$", name)  # `rs485` is a word
        number = int(match.group()) if match else 0
        while free in found:
            free += 1
        found[free if number == 0 or number in found else number] = None
    return list(found)


class Designator:
    """Gives designations: counts by owner and printed letters, and never gives one that the spec has taken."""

    def __init__(self, letters_count: int, taken: set[str]) -> None:
        self._letters_count = letters_count
        self._taken = taken
        self._counts: Counter[tuple[str, str]] = Counter()

    def numbered(self, kind: Kind[Any], number: int) -> str:
        """Return the designation of an owner, `-TB3`; the next free number where that one is taken."""
        letters = kind.letters[: self._letters_count]
        while f"-{letters}{number}" in self._taken:
            number += 1
        self._taken.add(f"-{letters}{number}")
        return f"-{letters}{number}"

    def next(self, owner: str, kind: Kind[Any]) -> str:
        """Return the next designation of a device within `owner`, itself a designation or empty."""
        letters = kind.letters[: self._letters_count]
        while True:
            self._counts[owner, letters] += 1
            designation = f"{owner}-{letters}{self._counts[owner, letters]}"
            if designation not in self._taken:
                self._taken.add(designation)
                return designation
