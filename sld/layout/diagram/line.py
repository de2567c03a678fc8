"""A line of a label: what it is for, and what is to be said. Text is made of it when it is broken or measured."""

from __future__ import annotations

from collections.abc import Iterable

from sld.citation import with_mark
from sld.frozen import dataclass, replace
from sld.quantity import Rating
from sld.readers import Role
from sld.words import NOTHING, Amount, Sayable, amount, sequence, span, unbroken, verbatim

__all__ = [
    "Line",
    "Role",
    "beside",
    "computed",
    "designation",
    "following",
    "joined",
    "kilo",
    "line",
    "rated",
    "value_of",
]


@dataclass(frozen=True, slots=True)
class Line:
    """One line. references_count: how many references to other sheets it ends in, which are written last of all.

    after: what joins it to the line before where that is read too; empty where it begins a line of its own. bare: it
    without its unit, for where a limit in the same unit is joined to it: `Uoc 704 ≤ 1000 V`.
    """

    role: Role
    said: Sayable
    references_count: int = 0
    after: str = ""
    bare: Sayable | None = None


def beside(line: Line | None, after: str = ", ") -> Line | None:
    """Return a line that goes on the line before it: behind a comma, or behind a space where the two are one."""
    return line and replace(line, after=after)


def joined(lines: Iterable[Line]) -> tuple[Line, ...]:
    """Return lines with those that go on the one before joined to it, whoever of them is left to be read."""
    found: list[Line] = []
    for each in lines:
        if not each.after or not found:
            found.append(replace(each, after="") if each.after else each)
            continue
        before = found[-1]
        one = each.after == " " and each.role is not Role.NAME  # a long name may be broken
        first = before.bare if before.bare is not None and each.after == " " else before.said
        said = unbroken(first, each.said) if one else sequence([first, each.said], each.after)
        found[-1] = replace(before, said=said, bare=None)
    return tuple(found)


def line(role: Role, said: Sayable | str | None) -> Line | None:
    """Return a line, none where there is nothing to say."""
    if not said:
        return None
    return Line(role, verbatim(said) if isinstance(said, str) else said)


def designation(text: str) -> Line:
    """Return the line with a designation."""
    return Line(Role.DESIGNATION, verbatim(text))


def value_of(rating: Rating) -> Sayable:
    """Return value and unit of a rating, or its trade name, without the reasons for it but marked if from memory."""
    return with_mark(unbroken(rating.trade_name) if rating.trade_name else amount(rating.value, rating.unit), rating)


def rated(rating: Rating | None, symbol: str = "", sign: str = "") -> Line | None:
    """Return the line with a rating that is stated or chosen; none where there is no rating.

    symbol, sign: what stands before it.
    """
    return line(Role.RATED, unbroken(symbol, unbroken(sign, value_of(rating))) if rating else NOTHING)


def computed(rating: Rating | None, symbol: str, role: Role = Role.COMPUTED) -> Line | None:
    """Return the line with a current that was computed, its symbol before it; none where there is no rating."""
    return line(role, unbroken(symbol, value_of(rating)) if rating else NOTHING)


def following(rating: Rating | None, symbol: str, role: Role = Role.COMPUTED) -> Line | None:
    """Return the line with a current that follows from the lengths of cables; none where there is no rating."""
    if rating is None:
        return None
    return line(role, unbroken(symbol, with_mark(span(rating.value, rating.unit), rating)))


def kilo(value: float, unit: str) -> Amount:
    """Return a value in units or in thousands of them: `14.8 kW`, `800 W`."""
    return amount(value / 1000, f"k{unit}") if abs(value) >= 1000 else amount(value, unit)
