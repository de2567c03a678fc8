"""What devices do in an installation, as rules and rating steps ask for it.

A role stands for the fields that every block with the role has: `device.given_as(RESIDUAL_PROTECTION)` returns them
typed. `tests/house/test_house_kinds.py` compares the blocks of the rows with the classes below.
"""

from __future__ import annotations

from typing import Literal, Protocol

from sld.model.kinds.row import Role

__all__ = [
    "AS_STATED",
    "AT_BATTERY",
    "BACKED_UP",
    "CARRYING",
    "CONVERSION",
    "DIRECTED",
    "INTERFACE",
    "ISOLATION",
    "MEASURING",
    "METERING",
    "OVERCURRENT_PROTECTION",
    "POLES",
    "RESIDUAL_PROTECTION",
    "REVERSE_BLOCKING",
    "STORAGE",
    "SURGE_PROTECTION",
    "SWITCHING",
    "SWITCHING_ON_COMMAND",
    "TRANSFORMATION",
    "TRIPPING",
    "BackedUp",
    "Directed",
    "InterfaceSettings",
    "OvercurrentProtection",
    "Poles",
    "RatedCurrent",
    "RatedVoltage",
    "ResidualProtection",
    "SurgeProtection",
    "Tripping",
]


class Poles(Protocol):
    """The poles that a device opens, None where the spec leaves them out."""

    poles: int | None


class RatedCurrent(Protocol):
    """A rated current, None where the spec leaves it out."""

    rated_current_a: float | None


class RatedVoltage(Protocol):
    """A rated voltage, None where the spec leaves it out."""

    rated_voltage_v: float | None


class OvercurrentProtection(RatedCurrent, Protocol):
    """What every overcurrent protective device states."""

    breaking_capacity_ka: float | None


class Tripping(OvercurrentProtection, Poles, Protocol):
    """What every circuit-breaker states."""

    @property
    def curve(self) -> Literal["B", "C", "D", "E"] | None:
        """Return its tripping characteristic; an RCBO has no E."""


class ResidualProtection(RatedCurrent, Poles, Protocol):
    """What every residual current device states."""

    residual_current_ma: float | None
    sensitivity: Literal["AC", "A", "F", "B"] | None
    selective: bool


class Directed(Protocol):
    """Whether its maker declares it for both directions of power, None where the spec leaves it out."""

    bidirectional: bool | None


class InterfaceSettings(Protocol):
    """What every relay of an interface protection states, alone or with its switch."""

    settings: str | None


class BackedUp(Protocol):
    """What a device states that needs another one to stand a short circuit."""

    conditional_current_ka: float | None
    backup_fuse_max_a: float | None


class SurgeProtection(Protocol):
    """What every surge protective device states."""

    test_class: Literal["1", "2", "1+2"]
    continuous_voltage_v: float | None
    protection_level_v: float | None
    impulse_current_ka: float | None
    lead_length_m: float | None


ISOLATION: Role[object] = Role("isolates what is behind it, and is kept open")
"""Circuit-breakers only where the spec says so; see `isolates` in `sld/rules/ways.py` for what their standards say."""

SWITCHING: Role[object] = Role("is opened and closed under load by hand")
SWITCHING_ON_COMMAND: Role[RatedCurrent] = Role("is opened and closed under load by a command")
OVERCURRENT_PROTECTION: Role[OvercurrentProtection] = Role("protects against overcurrent")
TRIPPING: Role[Tripping] = Role("protects against overcurrent by tripping, and is closed again")
RESIDUAL_PROTECTION: Role[ResidualProtection] = Role("protects against residual current")
BACKED_UP: Role[BackedUp] = Role("stands a short circuit together with a device ahead")
SURGE_PROTECTION: Role[SurgeProtection] = Role("limits surges")
CARRYING: Role[RatedCurrent] = Role("carries a current that it does not limit itself")
DIRECTED: Role[Directed] = Role("may be made for one direction of power only")
POLES: Role[Poles] = Role("opens all of a number of poles together")
AS_STATED: Role[RatedVoltage] = Role("stands in the path of strings with ratings that are stated, never chosen")
AT_BATTERY: Role[RatedVoltage] = Role("stands between a battery and its converter with ratings that are stated")
REVERSE_BLOCKING: Role[object] = Role("blocks reverse current")
METERING: Role[object] = Role("counts energy")
MEASURING: Role[object] = Role("measures")
INTERFACE: Role[InterfaceSettings] = Role("measures whether the network is there, for the interface protection")
CONVERSION: Role[object] = Role("converts between direct and alternating current, or between direct voltages")
TRANSFORMATION: Role[object] = Role("transforms between alternating voltages")
STORAGE: Role[object] = Role("stores energy")
