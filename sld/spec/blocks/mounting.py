"""What a maker states about mounting: mass, clearances, protection of the enclosure, temperatures."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, StringConstraints

from sld.spec.blocks.block import Block, Celsius
from sld.spec.units import Unit
from sld.spec.usual import Usual

__all__ = ["Mounting"]

_Clearance = Annotated[float, Unit("mm", minimum=0), Usual("300 mm", "", "10000 mm")]


class Mounting(Block):
    """Mounting as the maker states it; printed for those who mount, checked by nothing."""

    mass_kg: (
        Annotated[float, Unit("kg", minimum=0, exclusive_minimum=True), Usual("22 kg", "0.1 kg", "5000 kg")] | None
    ) = Field(default=None, description="Mass.")
    clearance_above_mm: _Clearance | None = Field(default=None, description="Distance to keep free above it.")
    clearance_below_mm: _Clearance | None = Field(default=None, description="Distance to keep free below it.")
    clearance_beside_mm: _Clearance | None = Field(default=None, description="Distance to keep free on either side.")
    clearance_front_mm: _Clearance | None = Field(default=None, description="Distance to keep free before it.")
    ip: Annotated[str, StringConstraints(pattern=r"^IP[0-6X][0-9X][A-Z]{0,2}$")] | None = Field(
        default=None, description="Degree of protection of the enclosure (IEC 60529), for example IP65."
    )
    temperature_min_c: Annotated[Celsius, Usual("-25 °C", "-60 °C", "20 °C")] | None = Field(
        default=None, description="Lowest air temperature for operation."
    )
    temperature_max_c: Annotated[Celsius, Usual("60 °C", "20 °C", "90 °C")] | None = Field(
        default=None, description="Highest air temperature for operation."
    )
