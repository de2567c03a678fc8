"""Protective devices of AC circuits: circuit-breakers, fuses, residual current devices."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import Field

from sld.spec.blocks.block import Amperes, AmpereSquareSeconds, Kiloamperes
from sld.spec.blocks.installed import Installed
from sld.spec.units import Unit
from sld.spec.usual import Doubt, Usual, doubt_of

__all__ = ["Breaker", "Fuse", "Rcbo", "Rcd"]

Milliamperes = Annotated[float, Unit("mA", minimum=0, exclusive_minimum=True)]


Isolating = Annotated[
    bool | None,
    Field(
        description="Marked by its maker as suitable for isolation. Left out, a miniature device is, by its standard; "
        "of a moulded-case one nothing is known."
    ),
]
Bidirectional = Annotated[
    bool | None,
    Field(
        description="Declared by its maker for power flow in both directions; `false` where line and load are marked. "
        "Left out, nothing is known."
    ),
]

LetThrough = Annotated[
    Annotated[AmpereSquareSeconds, Usual("45000 A2s", "500 A2s", "1e9 A2s")] | None,
    Field(description="I²t that it lets through of the greatest fault current, by its maker."),
]

_OF_MINIATURE = Usual("6 kA", high="50 kA")
"""IEC 60898-1 covers up to 25 kA (from memory); some to IEC 60947-2 break twice that (common practice, no source)."""


def _of_miniature(breaking_capacity_ka: float | None, other: str) -> Iterator[Doubt]:
    asked = f"is the decimal point in the right place, {other}?"
    if breaking_capacity_ka and (
        doubt := doubt_of("breaking_capacity", breaking_capacity_ka, "kA", _OF_MINIATURE, asked)
    ):
        yield doubt


class Breaker(Installed):
    """A circuit-breaker."""

    kind: Literal["breaker"]
    construction: Literal["miniature", "moulded_case"] = Field(
        default="miniature", description="Miniature or moulded-case."
    )
    rated_current_a: Annotated[Amperes, Usual("20 A", "0.3 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    curve: Literal["B", "C", "D"] | None = Field(
        default=None, description="Tripping characteristic. Left out, C where the loop impedance allows it, else B."
    )
    trip_factor: Annotated[float, Field(gt=1, le=20)] | None = Field(
        default=None,
        description="Magnetic trip as a multiple of the rated current (upper bound), for a moulded-case breaker.",
    )
    breaking_capacity_ka: Annotated[Kiloamperes, Usual("6 kA", "1 kA", "200 kA")] | None = Field(
        default=None, description="Rated short-circuit breaking capacity."
    )
    poles: Annotated[int, Field(ge=1, le=4)] | None = Field(
        default=None, description="Number of poles. Left out, the live conductors: 2 or 4."
    )
    clearing_time_ms: (
        Annotated[float, Unit("ms", minimum=0, exclusive_minimum=True, maximum=5000), Usual("20 ms", "1 ms", "1 s")]
        | None
    ) = Field(
        default=None,
        description="Longest time in which it clears a short circuit, with the delay that is set; used where no "
        "let-through energy is known.",
    )
    let_through_energy_a2s: LetThrough = None
    isolating: Isolating = None
    bidirectional: Bidirectional = None

    def doubts(self) -> Iterator[Doubt]:
        """Yield what is unusual, and a breaking capacity that no miniature circuit-breaker has."""
        yield from super().doubts()
        if self.construction == "miniature":
            yield from _of_miniature(self.breaking_capacity_ka, "or is it of `construction: moulded_case`")


class Fuse(Installed):
    """A fuse, or a fuse-switch-disconnector where `switch` is true."""

    kind: Literal["fuse"]
    rated_current_a: Annotated[Amperes, Usual("35 A", "0.3 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    breaking_capacity_ka: Annotated[Kiloamperes, Usual("50 kA", "1 kA", "300 kA")] | None = Field(
        default=None, description="Rated breaking capacity."
    )
    switch: bool = Field(default=False, description="Fuse-switch-disconnector instead of a plain fuse.")


class Rcd(Installed):
    """A residual current device without overcurrent protection."""

    kind: Literal["rcd"]
    rated_current_a: Annotated[Amperes, Usual("40 A", "6 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    residual_current_ma: Annotated[Milliamperes, Usual("300 mA", "5 mA", "30 A")] | None = Field(
        default=None, description="Rated residual operating current. Left out, the one that fits leakage and earth."
    )
    sensitivity: Literal["AC", "A", "F", "B"] | None = Field(
        default=None, description="RCD type. Left out, the one that the inverters behind it need."
    )
    selective: bool = Field(default=False, description="Time-delayed (S).")
    delay_s: Annotated[float, Unit("s", minimum=0), Usual("0.3 s", "0.06 s", "10 s")] | None = Field(
        default=None, description="Delay that is set, where it can be (IEC 60947-2 Annexes B and M)."
    )
    poles: Annotated[int, Field(ge=2, le=4)] | None = Field(
        default=None, description="Number of poles. Left out, the live conductors: 2 or 4."
    )
    bidirectional: Bidirectional = None


class Rcbo(Installed):
    """A residual current circuit-breaker with overcurrent protection."""

    kind: Literal["rcbo"]
    rated_current_a: Annotated[Amperes, Usual("20 A", "0.3 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    curve: Literal["B", "C", "D"] | None = Field(default=None, description="Tripping characteristic.")
    breaking_capacity_ka: Annotated[Kiloamperes, Usual("6 kA", "1 kA", "200 kA")] | None = Field(
        default=None, description="Rated short-circuit breaking capacity."
    )
    residual_current_ma: Annotated[Milliamperes, Usual("30 mA", "5 mA", "30 A")] | None = Field(
        default=None, description="Rated residual operating current. Left out, the one that fits leakage and earth."
    )
    sensitivity: Literal["AC", "A", "F", "B"] | None = Field(
        default=None, description="RCD type. Left out, the one that the inverters behind it need."
    )
    poles: Annotated[int, Field(ge=2, le=4)] | None = Field(
        default=None, description="Number of poles. Left out, the live conductors: 2 or 4."
    )
    let_through_energy_a2s: LetThrough = None
    isolating: Isolating = None
    bidirectional: Bidirectional = None

    def doubts(self) -> Iterator[Doubt]:
        """Yield what is unusual, and a breaking capacity that no miniature device has."""
        yield from super().doubts()
        yield from _of_miniature(self.breaking_capacity_ka, "or is the unit wrong")
