"""Cables of AC and DC circuits, and their types."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from sld.spec.blocks.block import (
    Block,
    Celsius,
    Metres,
    Placed,
    SquareMillimetres,
    Text,
    ThermalResistivity,
    Volts,
    Wired,
)
from sld.spec.blocks.conduit import Drawn
from sld.spec.fault import fault
from sld.spec.units import Unit
from sld.spec.usual import Usual

__all__ = ["AcCable", "CableType", "DcCable"]

Method = Literal["A1", "A2", "B1", "B2", "C", "D1", "D2", "E", "F"]


class CableType(Block):
    """A type of cable."""

    marking: Text | None = Field(
        default=None, description="What is printed on the cable. Left out, the name of the type."
    )
    conductor: Literal["copper", "aluminium"] = Field(default="copper", description="Conductor material.")
    insulation: Literal["PVC", "XLPE", "EN 50618"] = Field(
        default="PVC", description="PVC (70 °C), XLPE or EPR (90 °C), or a solar cable to EN 50618."
    )
    strands: Literal["class 2", "class 5"] = Field(
        default="class 2", description="IEC 60228 class: 2 stranded, 5 flexible."
    )
    temperature_rating_c: Annotated[Celsius, Usual("90 °C", "60 °C", "150 °C")] | None = Field(
        default=None,
        description="Temperature rating of the insulation: 60, 75 or 90 °C (used with NEC 690). Left out, 60 °C with "
        "PVC, else 90 °C. Without NEC 690 the temperature that a solar cable is loaded to on the DC side; left out, "
        "120 °C, which EN 50618 allows for 20 000 hours.",
    )
    rated_voltage_v: Annotated[Volts, Usual("1500 V", "100 V", "36 kV")] | None = Field(
        default=None, description="Rated voltage (DC for a solar cable)."
    )
    shielded: bool = Field(default=False, description="Has a shield (data cables).")

    @model_validator(mode="after")
    def _solar_cable_of_copper(self) -> CableType:
        if self.insulation == "EN 50618" and self.conductor == "aluminium":
            message = "EN 50618 knows copper conductors alone"
            raise fault(message, "give `insulation: XLPE` for a cable of aluminium", "conductor")
        return self


class ByMethod(Placed, Wired, Drawn):
    """What a cable laid by a reference method of IEC 60364-5-52 can say about the ground, and its further factor."""

    spacing_m: Annotated[Metres, Usual("0.25 m", "", "10 m")] | None = Field(
        default=None, description="Clear distance between cables or ducts in the ground. Left out, they touch."
    )
    soil_resistivity_k_m_per_w: Annotated[ThermalResistivity, Usual("1.5 K·m/W", "0.3 K·m/W", "6 K·m/W")] | None = (
        Field(default=None, description="Thermal resistivity of the soil around it. Left out, that of the site.")
    )
    depth_m: Annotated[float, Unit("m", minimum=0, exclusive_minimum=True), Usual("0.7 m", "0.05 m", "10 m")] | None = (
        Field(default=None, description="Depth in the ground. Left out, at most 0.8 m.")
    )
    capacity_factor: Annotated[float, Field(gt=0, le=2)] | None = Field(
        default=None, description="A further factor on the current-carrying capacity, for what no table here holds."
    )
    capacity_factor_reason: Text | None = Field(
        default=None, description="Why the further factor, for example thermal insulation or sun."
    )


class AcCable(ByMethod):
    """A stretch of AC cable."""

    kind: Literal["cable"]
    type: Text | None = Field(
        default=None, description="Name of a cable type. Left out, a copper cable with PVC insulation."
    )
    length_m: Annotated[Metres, Usual("25 m", "0.1 m", "5 km")] = Field(description="One-way length.")
    route: Text | None = Field(default=None, description="Where it runs, for those who lay it: `duct 3, then tray`.")
    section_mm2: Annotated[SquareMillimetres, Usual("6 mm2", "0.5 mm2", "1200 mm2")] | None = Field(
        default=None,
        description="Line conductor: an area, or a size such as `10 AWG`. Left out, the smallest that fits.",
    )
    protective_section_mm2: Annotated[SquareMillimetres, Usual("6 mm2", "0.5 mm2", "1200 mm2")] | None = Field(
        default=None,
        description="Protective conductor of the cable. Left out, by the line conductors, or by the leakage.",
    )
    protective_conductor: Literal["core", "separate", "separate_protected", "armour"] | None = Field(
        default=None,
        description="What the protective conductor is: a core of the cable, a conductor laid beside it, one beside it "
        "that is protected from damage, or its armour of steel wires. Left out, a core; with `protective_section` "
        "one that is not counted among the `cores`.",
    )
    armour_section_mm2: Annotated[SquareMillimetres, Usual("60 mm2", "10 mm2", "600 mm2")] | None = Field(
        default=None, description="Section of all steel wires of an armour that is the protective conductor."
    )
    neutral_section_mm2: Annotated[SquareMillimetres, Usual("35 mm2", "0.5 mm2", "1200 mm2")] | None = Field(
        default=None, description="Neutral conductor, a PEN too, where it is smaller. Left out, as the line conductors."
    )
    cores: Annotated[int, Field(ge=2, le=5)] | None = Field(
        default=None,
        description="Conductors of the cable. Left out: 3 with one phase, 5 with three, one less where the protective "
        "conductor is no core.",
    )
    parallel: Annotated[int, Field(ge=1, le=8)] = Field(default=1, description="Cables in parallel.")
    double_insulated: bool = Field(
        default=False,
        description="Double or reinforced insulation along its whole way, no armour or metal conduit (IEC 60364-4-41 "
        "412): in TT it may lie ahead of the RCD.",
    )
    method: Method = Field(
        default="B2", description="Reference installation method of IEC 60364-5-52; not used with NEC 690."
    )
    ambient_temperature_c: Annotated[Celsius, Usual("35 °C", "-20 °C", "90 °C")] | None = Field(
        default=None,
        description="Air or ground temperature. Left out, that of its `location`, of `soil_temperature` in the ground, "
        "else 30 °C or 20 °C.",
    )
    roof_clearance_m: Annotated[Metres, Usual("0.05 m", "", "1 m")] | None = Field(
        default=None,
        description="Distance to the roof below it, of a cable or conduit in the sun: below 23 mm, 33 °C are added to "
        "the temperature that the spec gives (NEC 310.15(B)(2); used with NEC 690). Left out, it is not over a roof; "
        "leave it out for XHHW-2 conductors, which are exempt.",
    )
    grouped_circuits: Annotated[int, Field(ge=1, le=20)] = Field(
        default=1,
        description="Circuits laid together, this one included; each is counted with as many cables in parallel as "
        "this one.",
    )
    grouped_cables: Annotated[int, Field(ge=1, le=100)] | None = Field(
        default=None,
        description="Cables that touch in all, those in parallel included. Left out, `grouped_circuits` times "
        "`parallel`.",
    )
    terminal_temperature_c: Annotated[Celsius, Usual("75 °C", "60 °C", "105 °C")] | None = Field(
        default=None,
        description="Temperature that the terminals at both ends are marked for: 60, 75 or 90 °C (NEC 110.14(C); used "
        "with NEC 690). Left out, 60 °C up to 100 A and 75 °C above.",
    )

    @property
    def protective_is_no_core(self) -> bool:
        """Return whether the protective conductor lies around or beside the cores."""
        if self.protective_conductor is None:
            return self.protective_section_mm2 is not None
        return self.protective_conductor != "core"

    @model_validator(mode="after")
    def _armour_is_known(self) -> AcCable:
        if (self.protective_conductor == "armour") != (self.armour_section_mm2 is not None):
            message = "an armour is the protective conductor where both `protective_conductor` and its section say so"
            raise fault(message, "give `protective_conductor: armour` with `armour_section`", "armour_section")
        if self.armour_section_mm2 is not None and (self.protective_section_mm2 is not None or self.double_insulated):
            key = "double_insulated" if self.double_insulated else "protective_section"
            raise fault(f"`{key}` does not go with an armour as protective conductor", "leave one of the two out", key)
        return self


class DcCable(ByMethod):
    """A stretch of DC cable, two conductors."""

    kind: Literal["cable"] = "cable"
    type: Text | None = Field(default=None, description="Name of a cable type. Left out, a solar cable to EN 50618.")
    length_m: Annotated[Metres, Usual("30 m", "0.3 m", "5 km")] = Field(description="One-way length.")
    route: Text | None = Field(default=None, description="Where it runs, for those who lay it: `duct 3, then tray`.")
    section_mm2: Annotated[SquareMillimetres, Usual("6 mm2", "1.5 mm2", "1200 mm2")] | None = Field(
        default=None, description="Conductor. Left out, the smallest that fits."
    )
    arrangement: Literal["single_in_air", "single_on_surface", "two_touching"] = Field(
        default="two_touching",
        description="How the two conductors of a solar cable lie in free air, as in the capacity table of EN 50618.",
    )
    method: Method | None = Field(
        default=None,
        description="Reference installation method of IEC 60364-5-52 for a cable in conduit, in a duct or in the "
        "ground, and for one that is no solar cable; with NEC 690 only whether it lies in the ground counts. Left out, "
        "a solar cable lies in free air by its `arrangement`, another cable by method B2.",
    )
    ambient_temperature_c: Annotated[Celsius, Usual("60 °C", "-20 °C", "120 °C")] | None = Field(
        default=None,
        description="Temperature around it. Left out: 70 °C; in the ground that of `soil_temperature`, else 20 °C.",
    )
    roof_clearance_m: Annotated[Metres, Usual("0.05 m", "", "1 m")] | None = Field(
        default=None,
        description="Distance to the roof below it, of a cable or conduit in the sun: below 23 mm, 33 °C are added to "
        "the temperature that the spec gives (NEC 310.15(B)(2); used with NEC 690). Left out, it is not over a roof; "
        "leave it out for XHHW-2 conductors, which are exempt.",
    )
    grouped_circuits: Annotated[int, Field(ge=1, le=20)] | None = Field(
        default=None,
        description="Circuits bunched together, this one included; 1 where they lie apart. Left out, all strings of "
        "the entry are taken as bunched.",
    )
    terminal_temperature_c: Annotated[Celsius, Usual("75 °C", "60 °C", "105 °C")] | None = Field(
        default=None,
        description="Temperature that the terminals at both ends are marked for: 60, 75 or 90 °C (NEC 110.14(C); used "
        "with NEC 690). Left out, 60 °C up to 100 A and 75 °C above.",
    )

    @model_validator(mode="after")
    def _laid_one_way(self) -> DcCable:
        if self.method is not None and "arrangement" in self.model_fields_set:
            message = "`arrangement` says how a cable lies in free air, and `method` that it lies another way"
            raise fault(message, "give one of the two: the one that is built", "arrangement")
        in_ground = {
            "spacing": self.spacing_m,
            "depth": self.depth_m,
            "soil_resistivity": self.soil_resistivity_k_m_per_w,
        }
        told = next((key for key, value in in_ground.items() if value is not None), None)
        if told is not None and self.method not in ("D1", "D2"):
            message = f"`{told}` is of a cable in the ground, and this one is not laid there"
            raise fault(message, "give `method: D1` in a duct or `method: D2` in the ground, or remove the key", told)
        return self
