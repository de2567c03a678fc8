"""An impedance as resistance and reactance, so that a chain of parts adds up with its angles."""

from __future__ import annotations

from collections.abc import Iterable
from math import hypot

from sld.frozen import dataclass

__all__ = ["Impedance", "in_series"]


@dataclass(frozen=True, slots=True)
class Impedance:
    """A series impedance in ohm. Adds as a complex number; multiplies by a plain factor."""

    r_ohm: float
    x_ohm: float

    def __add__(self, other: Impedance) -> Impedance:
        return Impedance(self.r_ohm + other.r_ohm, self.x_ohm + other.x_ohm)

    def __mul__(self, factor: float) -> Impedance:
        return Impedance(self.r_ohm * factor, self.x_ohm * factor)

    __rmul__ = __mul__

    @property
    def magnitude_ohm(self) -> float:
        """Return the absolute value in ohm."""
        return hypot(self.r_ohm, self.x_ohm)

    @classmethod
    def of_magnitude(cls, z_ohm: float, r_over_x_ratio: float) -> Impedance:
        """Return the impedance of `z_ohm` ohm whose resistance is `r_over_x_ratio` times its reactance."""
        x_ohm = z_ohm / hypot(1.0, r_over_x_ratio)
        return cls(r_over_x_ratio * x_ohm, x_ohm)


def in_series(parts: Iterable[Impedance]) -> Impedance:
    """Return the sum of all parts (0 ohm where there is none)."""
    total = Impedance(0.0, 0.0)
    for part in parts:
        total = total + part
    return total
