"""The site: climate, lightning, and where things are mounted."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from sld.spec.blocks.block import Block, Celsius, Text, ThermalResistivity
from sld.spec.blocks.conduit import Conduit
from sld.spec.fault import fault
from sld.spec.units import Unit
from sld.spec.usual import Usual

__all__ = ["Location", "Site"]


class Location(Block):
    """A place where devices are mounted."""

    outdoor: bool = Field(
        default=False, description="Outdoors. Where it is true and no temperature is given, 40 °C is assumed."
    )
    building: Text | None = Field(
        default=None,
        description="Building it is in, where the site has several; copper data lines between two are told.",
    )
    ambient_temperature_c: Annotated[Celsius, Usual("40 °C", "-20 °C", "80 °C")] | None = Field(
        default=None, description="Highest air temperature around cables and devices."
    )


class Site(Block):
    """Climate and surroundings. The two temperatures decide the string voltages."""

    temperature_min_c: Annotated[Celsius, Usual("-15 °C", "-60 °C", "10 °C")] = Field(
        description="Lowest air temperature of the site to be expected in daylight."
    )
    temperature_max_c: Annotated[Celsius, Usual("35 °C", "15 °C", "60 °C")] = Field(
        description="Highest air temperature of the site to be expected."
    )
    mounting: Literal["roof_parallel", "roof_tilted", "free_standing"] = Field(
        default="roof_parallel",
        description="How the modules are mounted: parallel and close to the roof, tilted above it, or standing free. "
        "Decides how much hotter than the air the cells get.",
    )
    building: Literal["dwelling", "other_building", "ground_mounted"] = Field(
        default="other_building",
        description="Kind of installation; decides the critical cable length for surge protection.",
    )
    lightning_density_per_km2_year: (
        Annotated[float, Unit("/km2/yr", minimum=0), Usual("1.5 /km2/yr", "", "100 /km2/yr")] | None
    ) = Field(default=None, description="Lightning ground flash density.")
    surroundings: Literal["rural", "suburban", "urban"] | None = Field(
        default=None,
        description="Surroundings of the supply line, for the calculated risk level of IEC 60364-4-44 443.5. Left out, "
        "no risk is assessed.",
    )
    surge_protection_declined: Text | None = Field(
        default=None,
        description="Who declared when that the AC side needs no surge protection, because loss or damage are "
        "tolerable (BS 7671 443.4.1; IEC 60364-4-44 443.4 for a single dwelling); printed.",
    )
    rear_irradiance_percent: Annotated[float, Unit("%", minimum=0, maximum=100), Usual("10 %")] | None = Field(
        default=None, description="Irradiance on the rear side in percent of the front; used with bifacial modules."
    )
    soil_temperature_c: Annotated[Celsius, Usual("20 °C", "-10 °C", "50 °C")] | None = Field(
        default=None, description="Highest temperature of the ground at the depth of cables. Left out: 20 °C."
    )
    soil_resistivity_k_m_per_w: Annotated[ThermalResistivity, Usual("1.5 K·m/W", "0.3 K·m/W", "6 K·m/W")] | None = (
        Field(default=None, description="Thermal resistivity of the soil. Left out: 2.5 K·m/W.")
    )
    conduits: dict[str, Conduit] = Field(
        default={}, description="Conduits and ducts by name; cables refer to them by `conduit`."
    )
    locations: dict[str, Location] = Field(
        default={}, description="Places by name; devices refer to them by `location`."
    )

    @model_validator(mode="after")
    def _in_order(self) -> Site:
        if self.temperature_min_c >= self.temperature_max_c:
            message = f"the lowest temperature {self.temperature_min_c:g} °C is not below the highest"
            raise fault(message, "give the lowest and the highest air temperature of the year", "temperature_min")
        return self
