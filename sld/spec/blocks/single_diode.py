"""The single-diode data of a module type, as module databases hold them."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, model_validator

from sld.spec.blocks.block import Amperes, Block, Ohms, Volts
from sld.spec.blocks.coefficient import PowerCoefficient
from sld.spec.fault import fault
from sld.spec.units import Unit
from sld.spec.usual import Usual

__all__ = ["SingleDiode"]

ShuntResistance = Annotated[float, Unit("ohm", minimum=0, exclusive_minimum=True)]
Electronvolts = Annotated[float, Unit("eV", minimum=0.5, maximum=4)]


class SingleDiode(Block):
    """Reference values of the five-parameter single-diode model, at standard test conditions.

    They give the highest voltage of a string where the maker states no temperature coefficient, and catch a slip of
    unit or sign in one that is stated.
    """

    photocurrent_a: Annotated[Amperes, Usual("13.9 A")] = Field(description="Photocurrent IL.")
    saturation_current_a: Annotated[Amperes, Usual("0.12 nA", "", "1 mA")] = Field(
        description="Saturation current of the diode I0."
    )
    series_resistance_ohm: Annotated[Ohms, Usual("0.2 ohm")] = Field(description="Series resistance Rs.")
    shunt_resistance_ohm: Annotated[ShuntResistance, Usual("300 ohm")] = Field(description="Shunt resistance Rsh.")
    modified_ideality_v: Annotated[Volts, Usual("1.6 V")] | None = Field(
        default=None, description="Modified ideality a: cells in series times ideality factor times kT/q at 25 °C."
    )
    ideality_factor: Annotated[float, Field(gt=0, le=5)] | None = Field(
        default=None, description="Ideality factor of one cell, with `cells_in_series` in place of `modified_ideality`."
    )
    cells_in_series: Annotated[int, Field(ge=1, le=1000)] | None = Field(
        default=None, description="Cells in series in one module."
    )
    band_gap_ev: Annotated[Electronvolts, Usual("1.12 eV")] = Field(
        default=1.121, description="Band gap at 25 °C. Left out, that of crystalline silicon, 1.121 eV."
    )
    band_gap_coefficient: Annotated[PowerCoefficient, Usual("-0.0268 %/K")] | None = Field(
        default=None,
        description="Temperature coefficient of the band gap, 0 or below. Left out, that of crystalline silicon, "
        "-0.02677 %/K.",
    )

    @model_validator(mode="after")
    def _one_ideality(self) -> SingleDiode:
        """Refuse both ways of giving the ideality, and neither."""
        by_cells = (self.ideality_factor is not None, self.cells_in_series is not None)
        if self.modified_ideality_v is not None and any(by_cells):
            message = "the ideality is given in two ways"
            raise fault(message, "give `modified_ideality` or `ideality_factor` with `cells_in_series`")
        if self.modified_ideality_v is None and not all(by_cells):
            message = "the ideality of the diode is missing"
            raise fault(message, "give `modified_ideality` or `ideality_factor` with `cells_in_series`")
        return self
