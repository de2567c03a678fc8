"""Earthing: main terminal, electrode, conductors, lightning protection."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from sld.spec.blocks.block import Block, Metres, Named, Ohms, SquareMillimetres, Text, Wired
from sld.spec.usual import Usual

__all__ = ["Bonding", "EarthElectrode", "Earthing", "EarthingConductor", "LightningProtection", "MainBonding"]


class EarthElectrode(Block):
    """The earth electrode."""

    kind: Literal["foundation", "ring", "rod", "mesh"] | None = Field(
        default=None, description="Kind of electrode. Left out, it is not known, and nothing is reduced by it."
    )
    resistance_ohm: Annotated[Ohms, Usual("12 ohm", "", "100 kohm")] | None = Field(
        default=None, description="Resistance to earth, measured or declared."
    )
    status: Literal["new", "existing", "future"] | None = Field(
        default=None, description="new, existing or future. Left out, nothing is said of it."
    )


class EarthingConductor(Block):
    """The conductor from the main earthing terminal to the electrode; without one, to the supply's earthing point."""

    section_mm2: Annotated[SquareMillimetres, Usual("16 mm2", "1.5 mm2", "1200 mm2")] | None = Field(
        default=None, description="Section. Left out, the smallest that fits."
    )
    length_m: Annotated[Metres, Usual("8 m", "", "1 km")] | None = Field(default=None, description="Length.")
    buried: bool | None = Field(
        default=None, description="Buried in the ground. Left out, that is reckoned with at an electrode."
    )
    mechanically_protected: bool = Field(default=False, description="Protected against mechanical damage.")
    corrosion_protected: bool | None = Field(
        default=None, description="Protected against corrosion. Left out, that is reckoned with."
    )


class MainBonding(Block):
    """A main bonding conductor from the earthing terminal of a building."""

    to: Text = Field(description="What is bonded, in words: water pipe, structural steel, module frames ...")
    section_mm2: Annotated[SquareMillimetres, Usual("10 mm2", "1.5 mm2", "1200 mm2")] | None = Field(
        default=None, description="Section. Left out, the smallest that fits."
    )
    length_m: Annotated[Metres, Usual("12 m", "", "1 km")] | None = Field(default=None, description="Length.")


class Bonding(MainBonding):
    """A bonding conductor from the main earthing terminal."""

    purpose: Literal["main_bonding", "array_frame", "other"] = Field(
        default="main_bonding",
        description="Main bonding of extraneous parts, functional bonding of the array, or other.",
    )


class LightningProtection(Block):
    """The building's lightning protection system."""

    level: Literal["I", "II", "III", "IV"] = Field(default="III", description="Class of the system.")
    separation_kept: bool = Field(description="The separation distance to the array is kept everywhere.")
    down_conductors: Annotated[int, Field(ge=1)] | None = Field(default=None, description="Number of down-conductors.")
    separation_m: Annotated[Metres, Usual("0.5 m", "", "100 m")] | None = Field(
        default=None, description="Smallest distance between the array or its cables and the system."
    )
    separation_path_m: Annotated[Metres, Usual("10 m", "", "1 km")] | None = Field(
        default=None,
        description="Length along air-termination and down-conductor from there to the next bonding point.",
    )


class Earthing(Named, Wired):
    """The earthing arrangement of the installation."""

    electrode: EarthElectrode | None = Field(
        default=None, description="Earth electrode. Left out, one is drawn with TT and IT only."
    )
    conductor: EarthingConductor = Field(default=EarthingConductor(), description="Earthing conductor.")
    bonding: list[Bonding] = Field(
        default=[], description="Bonding conductors. One with `purpose: array_frame` is assumed where there is none."
    )
    extraneous_parts: bool | None = Field(
        default=None,
        description="The building has extraneous conductive parts (metal pipes that come from outside, structural "
        "steel), which need main bonding; `false` where it has none. Left out, that is asked.",
    )
    lightning_protection: LightningProtection | None = Field(
        default=None, description="Lightning protection system, if any."
    )
