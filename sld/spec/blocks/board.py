"""Boards, junction boxes and loads: the neighbours of the inverters."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Literal, TypeVar

from pydantic import Field, field_validator, model_validator

from sld.spec.blocks.block import Amperes, Kiloamperes, Line, Placed, Text, Watts, Wired
from sld.spec.blocks.circuit import AcCircuit
from sld.spec.blocks.earthing import EarthElectrode, MainBonding
from sld.spec.blocks.mounting import Mounting
from sld.spec.fault import fault
from sld.spec.units import Unit
from sld.spec.usual import Doubt, Usual, doubt_of

__all__ = ["Board", "JunctionBox", "Load"]

Milliamperes = Annotated[float, Unit("mA", minimum=0)]


_LEAST_SHORT_TIME_KA, _SHORT_TIME_KA_PER_A = 25.0, 0.2
"""A short-time current beyond the larger of the two is not built for a board of that rated current (common practice,
no source)."""


OnLine = TypeVar("OnLine", bound="Board | Load")


def _on_one_phase(block: OnLine) -> OnLine:
    if block.line is not None and block.phases == 3:
        message = f"`line: {block.line}` is of a single-phase circuit, and `phases` is 3"
        raise fault(message, "leave one of the two out", "line")
    return block


class Board(Placed, Wired):
    """A distribution board with its busbar.

    Exactly one board has neither `fed_from` nor `fed_from_backup`: the main board, which `supply` feeds. One board is
    fed from each of the `further_supplies`, and is the main board there.
    """

    fed_from: Text | None = Field(
        default=None,
        description="Board, or one of the `further_supplies`, that feeds it. Left out for the main board of `supply`.",
    )
    fed_from_backup: Text | None = Field(
        default=None,
        description="Inverter whose backup output feeds it, instead of a board: a board that stays supplied while the "
        "network is away.",
    )
    circuit: AcCircuit | None = Field(
        default=None,
        description="Devices and cables from the supply point (main board) or the feeding board to the busbar, in this "
        "order. Those after the last cable, or all where there is no cable, sit in this board. Left out, an energy "
        "meter and a main switch are assumed for the main board, a circuit-breaker for another.",
    )
    rated_current_a: Annotated[Amperes, Usual("63 A", "6 A", "10 kA")] | None = Field(
        default=None, description="Rated current of the assembly (busbar), or of the trunk cable."
    )
    trunk: bool = Field(
        default=False,
        description="Not a board, but the AC trunk cable that several micro-inverters are plugged into; drawn without "
        "a frame. Its `circuit` begins with the device that protects it.",
    )
    phases: Literal[1, 3] | None = Field(
        default=None, description="Number of phases. Left out, one where `line` is given, else that of what feeds it."
    )
    line: Line | None = Field(
        default=None,
        description="Line conductor of a single-phase board on several, or the two that it is fed by. Left out, on "
        "three phases all such are summed on one.",
    )
    short_time_current_ka: Annotated[Kiloamperes, Usual("10 kA", "0.5 kA", "200 kA")] | None = Field(
        default=None, description="Rated short-time withstand current Icw of the assembly."
    )
    peak_current_ka: Annotated[Kiloamperes, Usual("17 kA", "0.5 kA", "440 kA")] | None = Field(
        default=None, description="Rated peak withstand current Ipk of the assembly."
    )
    conditional_current_ka: Annotated[Kiloamperes, Usual("16 kA", "0.5 kA", "200 kA")] | None = Field(
        default=None,
        description="Rated conditional short-circuit current Icc of the assembly, with the device ahead that "
        "its maker names.",
    )
    backup_fuse_max_a: Annotated[Amperes, Usual("100 A", "6 A", "1.25 kA")] | None = Field(
        default=None,
        description="Largest fuse or circuit-breaker ahead with which the assembly has its conditional current.",
    )
    diversity_factor: Annotated[float, Field(gt=0, le=1)] | None = Field(
        default=None,
        description="Rated diversity factor RDF of the assembly: the share of their rated currents that its outgoing "
        "circuits carry for long together. Left out: 1.",
    )
    earthing_system: Literal["TT"] | None = Field(
        default=None,
        description="`TT` for a building with an earth electrode of its own, to which the protective conductor of its "
        "feeder is not connected. Left out, that of the board it is fed from, in the end that of the supply.",
    )
    electrode: EarthElectrode | None = Field(
        default=None, description="Earth electrode of that building; only with `earthing_system`."
    )
    bonding: list[MainBonding] = Field(
        default=[],
        description="Main bonding conductors of the building of this board, another than that of the main board.",
    )
    extraneous_parts: bool | None = Field(
        default=None,
        description="That building has extraneous conductive parts, which need main bonding; `false` where it has "
        "none. Left out, that is asked where the building has an earth electrode of its own.",
    )
    source_connection: Literal["any_position", "opposite_end", "sum_of_devices", "supply_side", "power_control"] = (
        Field(
            default="any_position",
            description="How sources feed the busbar (NEC 705.11, 705.12(B), 705.13; with NEC 690): breakers at any "
            "position, at the end opposite the main device, all devices together not above the busbar, ahead of the "
            "service disconnect, or held back by a power control system.",
        )
    )
    power_control_current_a: Annotated[Amperes, Usual("200 A", "6 A", "10 kA")] | None = Field(
        default=None,
        description="Current at the busbar that the power control system is set to (NEC 705.13); with "
        "`source_connection: power_control`.",
    )

    @field_validator("fed_from", mode="before")
    @classmethod
    def _is_fed_from_one(cls, given: object) -> object:
        if isinstance(given, list):
            message = f"the board is fed from {len(given)}, which would be joined by it"
            remedy = (
                "name the one that feeds it; a second source that takes its place stands at a `changeover` in its "
                "`circuit`, as `second_source`"
            )
            raise fault(message, remedy)
        return given

    @model_validator(mode="after")
    def _a_line_is_of_one_phase(self) -> Board:
        return _on_one_phase(self)

    @model_validator(mode="after")
    def _has_an_electrode_where_it_is_earthed_apart(self) -> Board:
        if self.earthing_system is not None and self.fed_from is None and self.fed_from_backup is None:
            message = "the main board has the earthing system of the supply"
            raise fault(
                message, "give it as `earthing_system` of `supply`, the electrode under `earthing`", "earthing_system"
            )
        if self.electrode is not None and self.earthing_system is None:
            message = "an earth electrode of a board, and its earthing system is not given"
            raise fault(message, "give `earthing_system: TT`, or the electrode under `earthing`", "electrode")
        for key in ("bonding", "extraneous_parts"):
            if self.is_main and key in self.model_fields_set:
                message = f"`{key}` of the main board, whose building has the main earthing terminal"
                raise fault(message, "give it under `earthing`", key)
        return self

    @property
    def is_main(self) -> bool:
        """Return whether the supply feeds it."""
        return self.fed_from is None and self.fed_from_backup is None

    def doubts(self) -> Iterator[Doubt]:
        """Yield what is unusual, and a short-time current that is large for the rated current."""
        yield from super().doubts()
        if self.short_time_current_ka and self.rated_current_a:
            most_ka = max(_LEAST_SHORT_TIME_KA, _SHORT_TIME_KA_PER_A * self.rated_current_a)
            usual = Usual("10 kA", high=f"{most_ka:g} kA")
            asked = "is the decimal point in the right place, here and at `rated_current`?"
            if doubt := doubt_of("short_time_current", self.short_time_current_ka, "kA", usual, asked):
                yield doubt


class JunctionBox(Placed, Wired):
    """A DC junction box; string fuses, isolators and surge protection can sit in it."""

    mounting: Mounting | None = Field(default=None, description="What its maker states about mounting.")


class Load(Placed, Wired):
    """A load, drawn as a neighbour and counted in the sums."""

    connected_to: Text | None = Field(
        default=None, description="Board that feeds it. Left out where there is only one."
    )
    power_w: Annotated[Watts, Usual("3.7 kW", "1 W", "10 MW")] | None = Field(
        default=None, description="Highest power taken; this or `current`."
    )
    current_a: Annotated[Amperes, Usual("16 A", "10 mA", "10 kA")] | None = Field(
        default=None,
        description="Highest current taken, per line conductor. Left out, from the power at power factor 1.",
    )
    diversity_factor: Annotated[float, Field(gt=0, le=1)] | None = Field(
        default=None,
        description="Share of its highest current that it takes together with other loads, where their circuits join; "
        "its own circuit carries the highest current. Left out: 1.",
    )
    continuous: bool | None = Field(
        default=None,
        description="Its highest current flows for three hours or more (used with NEC 690). Left out, that is so of a "
        "charging point alone.",
    )
    supplies: Literal["socket_outlets", "luminaires", "fixed_equipment"] | None = Field(
        default=None,
        description="What its circuit supplies: socket-outlets for general use, luminaires, or fixed equipment alone; "
        "the first need additional protection by an RCD, and are switched off in the time of final circuits up to "
        "63 A. Left out, it is not known, and nothing of that is asked.",
    )
    charging_point: bool = Field(default=False, description="Charging point for electric vehicles.")
    dc_residual_current_ma: Annotated[Milliamperes, Usual("6 mA", "", "1 A")] | None = Field(
        default=None,
        description="Highest smooth DC residual current of a charging point: 6 mA where it detects that.",
    )
    vehicle_outdoors: bool | None = Field(
        default=None,
        description="The vehicle at a charging point may stand outdoors. Left out, it does where the `location` of the "
        "charging point is outdoor, else that is asked.",
    )
    open_pen_protection: Literal["disconnection", "electrode", "own_earth", "separation", "balanced_load"] | None = (
        Field(
            default=None,
            description="What protects at a charging point when the combined neutral of the supply (PEN) breaks: a "
            "device that disconnects it from the lines and the protective conductor, an electrode that keeps the "
            "voltage to earth low, an earth of its own (TT), electrical separation, or a three-phase load in balance.",
        )
    )
    phases: Literal[1, 3] | None = Field(
        default=None, description="Number of phases. Left out, one where `line` is given, else that of the board."
    )
    line: Line | None = Field(
        default=None,
        description="Line conductor of a single-phase load on several, or the two that it works between. Left out, on "
        "three phases all such are summed on one; with split phase it works between the two.",
    )
    circuit: AcCircuit | None = Field(
        default=None,
        description="Devices and cables from the board to the load. Left out, a circuit-breaker is assumed.",
    )

    @model_validator(mode="after")
    def _a_line_is_of_one_phase(self) -> Load:
        return _on_one_phase(self)

    @model_validator(mode="after")
    def _a_vehicle_is_at_a_charging_point(self) -> Load:
        for key in ("vehicle_outdoors", "open_pen_protection"):
            if not self.charging_point and getattr(self, key) is not None:
                raise fault(f"`{key}` is of a charging point", "write `charging_point: true`, or leave it out", key)
        return self
