"""Protective devices of AC circuits: circuit-breakers, fuses, residual current devices."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import Field, model_validator

from sld.spec.blocks.block import Amperes, AmpereSquareSeconds, Kiloamperes
from sld.spec.blocks.installed import BackedUp, Installed
from sld.spec.fault import fault
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


class Breaker(BackedUp):
    """A circuit-breaker."""

    kind: Literal["breaker"]
    construction: Literal["miniature", "moulded_case"] = Field(
        default="miniature", description="Miniature or moulded-case."
    )
    rated_current_a: Annotated[Amperes, Usual("20 A", "0.3 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    curve: Literal["B", "C", "D", "E"] | None = Field(
        default=None,
        description="Tripping characteristic; E of a selective main circuit-breaker (DIN VDE 0641-21), which waits for "
        "the devices behind it. Left out, C where the loop impedance allows it, else B.",
    )
    trip_factor: Annotated[float, Field(gt=1, le=20)] | None = Field(
        default=None,
        description="Magnetic trip as a multiple of the rated current (upper bound), for a moulded-case breaker.",
    )
    overload_setting_a: Annotated[Amperes, Usual("200 A", "6 A", "6.3 kA")] | None = Field(
        default=None,
        description="Setting Ir of the overload release of a moulded-case breaker; what it protects is held to it, "
        "not to the rated current.",
    )
    short_time_setting_a: Annotated[Amperes, Usual("1.2 kA", "10 A", "65 kA")] | None = Field(
        default=None, description="Setting Isd of its short-time release."
    )
    short_time_delay_s: Annotated[float, Unit("s", minimum=0), Usual("0.1 s", "", "1 s")] | None = Field(
        default=None, description="Delay tsd of the short-time release. Left out: none."
    )
    instantaneous_setting_a: Annotated[Amperes, Usual("2 kA", "10 A", "100 kA")] | None = Field(
        default=None, description="Setting Ii of its instantaneous release."
    )
    earth_fault_setting_a: Annotated[Amperes, Usual("100 A", "1 A", "1.2 kA")] | None = Field(
        default=None, description="Setting Ig of its earth-fault release."
    )
    earth_fault_delay_s: Annotated[float, Unit("s", minimum=0), Usual("0.2 s", "", "1 s")] | None = Field(
        default=None, description="Delay tg of the earth-fault release. Left out: none."
    )
    breaking_capacity_ka: Annotated[Kiloamperes, Usual("6 kA", "1 kA", "200 kA")] | None = Field(
        default=None, description="Rated short-circuit breaking capacity: of a moulded-case breaker Icu."
    )
    service_breaking_capacity_ka: Annotated[Kiloamperes, Usual("36 kA", "1 kA", "200 kA")] | None = Field(
        default=None, description="Rated service short-circuit breaking capacity Ics of a moulded-case breaker."
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

    @model_validator(mode="after")
    def _settings_fit_together(self) -> Breaker:
        for key, message, remedy in _of_settings(self):
            raise fault(message, remedy, key)
        return self

    def doubts(self) -> Iterator[Doubt]:
        """Yield what is unusual, and a breaking capacity that no miniature circuit-breaker has."""
        yield from super().doubts()
        if self.construction == "miniature":
            yield from _of_miniature(self.breaking_capacity_ka, "or is it of `construction: moulded_case`")


def _of_settings(breaker: Breaker) -> Iterator[tuple[str, str, str]]:
    """Yield what does not go together: key, message and remedy."""
    settings = {
        "overload_setting": breaker.overload_setting_a,
        "short_time_setting": breaker.short_time_setting_a,
        "instantaneous_setting": breaker.instantaneous_setting_a,
        "earth_fault_setting": breaker.earth_fault_setting_a,
    }
    given = {key: setting_a for key, setting_a in settings.items() if setting_a is not None}
    delays = {"short_time": breaker.short_time_delay_s, "earth_fault": breaker.earth_fault_delay_s}
    for name, delay_s in delays.items():
        if delay_s is not None and f"{name}_setting" not in given:
            yield f"{name}_delay", "a delay of a release that is not set", f"give `{name}_setting` too"
    if given and breaker.construction == "miniature":
        yield next(iter(given)), "a miniature circuit-breaker has no settings", "write `construction: moulded_case`"
    yield from _of_capacities(breaker)
    if breaker.trip_factor is not None and {"short_time_setting", "instantaneous_setting"} & given.keys():
        yield "trip_factor", "the magnetic trip is given twice, by factor and by setting", "remove `trip_factor`"
    most_a, overload_a = breaker.rated_current_a, breaker.overload_setting_a
    if overload_a is not None and most_a is not None and overload_a > most_a:
        message = f"the overload release is set to {overload_a:g} A, above the rated current of {most_a:g} A"
        yield "overload_setting", message, "read both off the breaker again"
    rising = [given[key] for key in ("overload_setting", "short_time_setting", "instantaneous_setting") if key in given]
    if rising != sorted(rising):
        message = "the settings do not rise from overload over short time to instantaneous"
        yield (
            "short_time_setting" if "short_time_setting" in given else "instantaneous_setting",
            message,
            ("read Ir, Isd and Ii off the release again"),
        )


def _of_capacities(breaker: Breaker) -> Iterator[tuple[str, str, str]]:
    service_ka, ultimate_ka = breaker.service_breaking_capacity_ka, breaker.breaking_capacity_ka
    key = "service_breaking_capacity"
    if service_ka is None:
        return
    if breaker.construction == "miniature":
        yield key, "Ics is stated of moulded-case breakers", "write `construction: moulded_case`, or remove it"
    elif ultimate_ka is not None and service_ka > ultimate_ka:
        message = f"Ics of {service_ka:g} kA is above Icu of {ultimate_ka:g} kA"
        yield key, message, "read Icu (`breaking_capacity`) and Ics off the breaker again"


class Fuse(Installed):
    """A fuse of characteristic gG, or a fuse-switch-disconnector with such fuses where `switch` is true."""

    kind: Literal["fuse"]
    rated_current_a: Annotated[Amperes, Usual("35 A", "0.3 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current. Left out, the smallest that fits."
    )
    breaking_capacity_ka: Annotated[Kiloamperes, Usual("50 kA", "1 kA", "300 kA")] | None = Field(
        default=None, description="Rated breaking capacity."
    )
    switch: bool = Field(default=False, description="Fuse-switch-disconnector instead of a plain fuse.")


class Rcd(BackedUp):
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


class Rcbo(BackedUp):
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
    selective: bool = Field(default=False, description="Time-delayed (S).")
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
