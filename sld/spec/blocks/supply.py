"""The public supply: voltage, earthing system, fault level, service fuse, optional transformer."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import AfterValidator, Field, StringConstraints, model_validator

from sld.grid.read import GENERIC, known
from sld.spec.blocks.block import (
    Amperes,
    Block,
    Kiloamperes,
    Metres,
    Ohms,
    SquareMillimetres,
    Text,
    Voltamperes,
    Volts,
    Watts,
)
from sld.spec.countries import known_country, listed
from sld.spec.fault import fault
from sld.spec.frequency import usual_frequency_hz
from sld.spec.units import Quantity, Unit, Units
from sld.spec.usual import Doubt, Usual, doubt_of

__all__ = ["EarthingSystem", "Supply", "SupplyTransformer", "usual_voltage_v"]

EarthingSystem = Literal["TN-S", "TN-C-S", "TT", "IT"]


_THREE_WIRE_V = (230.0, 240.0)
"""Voltages between lines that networks of three wires have, and no network with a neutral (IEC 60038:2009 Table 1: one
value alone is of a three-wire system; 240 V there, 230 V from memory)."""

_LEAST_SHARE = 0.8
"""A highest voltage below this share of the nominal one is one to neutral beside one between lines."""


class SupplyTransformer(Block):
    """A distribution transformer of the site, upstream of the main board."""

    rated_power_va: Annotated[Voltamperes, Usual("400 kVA", "1 kVA", "100 MVA")] = Field(description="Rated power.")
    status: Literal["new", "existing"] = Field(default="existing", description="Whether it is new or existing.")
    primary_voltage_v: Annotated[Volts, Usual("20 kV", "200 V", "150 kV")] = Field(
        description="Nominal voltage of the high-voltage side."
    )
    secondary_voltage_v: Annotated[Volts, Usual("410 V", "100 V", "1.1 kV")] | None = Field(
        default=None, description="No-load voltage of the low-voltage side."
    )
    short_circuit_voltage_percent: Annotated[
        float, Unit("%", minimum=0, exclusive_minimum=True, maximum=100), Usual("4 %", "0.5 %", "20 %")
    ] = Field(description="Short-circuit voltage uk.")
    load_losses_w: Annotated[Watts, Usual("4.6 kW", "5 W", "1 MW")] | None = Field(
        default=None, description="Load losses at rated current."
    )
    vector_group: Text | None = Field(default=None, description="For example Dyn11.")
    network_fault_power_va: Annotated[Voltamperes, Usual("250 MVA", "1 MVA", "50 GVA")] | None = Field(
        default=None, description="Short-circuit power of the network behind it."
    )
    secondary_length_m: Annotated[Metres, Usual("6 m", "", "1 km")] | None = Field(
        default=None,
        description="Length of the conductors from its low-voltage terminals to the first overcurrent device. Left "
        "out, the cables of the spec on that way.",
    )
    primary_protection: Text | None = Field(
        default=None,
        description="Protective device on its high-voltage side, where it is shown to protect those conductors too; "
        "printed.",
    )


class Supply(Block):
    """The connection to the public network."""

    phases: Literal[1, 3] = Field(default=3, description="Number of phases.")
    voltage_v: Annotated[Volts, Usual("400 V", "100 V", "1 kV")] | None = Field(
        default=None,
        description="Nominal voltage: between lines with three phases, to neutral with one. Left out, 400 V or 230 V "
        "is assumed, under NEC 690 208 V or 120 V.",
    )
    split_phase: bool = Field(
        default=False,
        description="One phase with two lines and a neutral in the middle, such as 120/240 V: `voltage` is then that "
        "between the lines, 240 V if it is left out.",
    )
    neutral: Literal["distributed", "not_distributed"] | None = Field(
        default=None,
        description="Whether the network brings a neutral conductor. Without one, loads and inverters with one phase "
        "work between two lines, and so does a supply with one phase. Left out, it is distributed, but for three "
        "phases with 230 V or 240 V between lines, which are voltages of networks of three wires.",
    )
    voltage_max_v: Annotated[Volts, Usual("420 V", "100 V", "1.15 kV")] | None = Field(
        default=None,
        description="Highest voltage measured or declared at the supply point, on the basis of `voltage`; with it the "
        "voltage at the inverters is compared with 110 %.",
    )
    overhead: bool = Field(default=False, description="The supply arrives by an overhead line exposed to lightning.")
    direct_strokes: bool | None = Field(
        default=None,
        description="Lightning strokes to the overhead line between its last pole and the building are reckoned with; "
        "with `overhead`. Left out, it is not known.",
    )
    risk_length_m: Annotated[Metres, Usual("800 m", "1 m", "2 km")] | None = Field(
        default=None,
        description="Risk assessment length LP of the supply line, of 1 km at most: twice the overhead and once the "
        "buried low-voltage length, 0.4 times the overhead and 0.2 times the buried high-voltage length (IEC "
        "60364-4-44 443.5). Left out, 2 km: all overhead.",
    )
    frequency_hz: Annotated[
        float, Unit("Hz", minimum=0, exclusive_minimum=True), Usual("50 Hz", among=("50 Hz", "60 Hz"))
    ] = Field(
        default=50.0, description="Nominal frequency. Left out, that of the country, else 50 Hz, under NEC 690 60 Hz."
    )
    earthing_system: EarthingSystem = Field(description="Earthing system of the installation.")
    service_fuse_a: Annotated[Amperes, Usual("63 A", "6 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current of the service fuse, taken as gG. Left out, none is drawn."
    )
    service_fuse_status: Literal["new", "existing", "future"] = Field(
        default="existing", description="Status of the service fuse."
    )
    prospective_fault_current_ka: Annotated[Kiloamperes, Usual("6 kA", "0.05 kA", "200 kA")] | None = Field(
        default=None,
        description="Highest prospective short-circuit current at the supply point. Left out, assumed from the "
        "earthing system; not used with a `transformer`.",
    )
    loop_impedance_ohm: Annotated[Ohms, Usual("0.35 ohm", "", "2 kohm")] | None = Field(
        default=None,
        description="Earth-fault loop impedance outside the installation, without its own electrode. Left out, "
        "assumed from the earthing system; not used with a `transformer`.",
    )
    neutral_section_mm2: Annotated[SquareMillimetres, Usual("25 mm2", "4 mm2", "1200 mm2")] | None = Field(
        default=None,
        description="Neutral of the supply, with TN-C-S its PEN, as copper (an aluminium one counts 0.625 of its "
        "section): bonding goes by it with BS 7671. Left out, that of the cables in the circuit of the main board.",
    )
    transformer: SupplyTransformer | None = Field(
        default=None, description="The site's own transformer, if there is one."
    )
    export_limit_w: Annotated[float, Unit("W", minimum=0), Usual("30 kW", "", "1 GW")] | None = Field(
        default=None, description="Highest power that may be fed in at the supply point; 0 for none."
    )
    voltage_rise_limit_percent: (
        Annotated[float, Unit("%", minimum=0, exclusive_minimum=True, maximum=100), Usual("3 %", "0.1 %", "10 %")]
        | None
    ) = Field(
        default=None,
        description="Highest voltage rise from the supply point to an inverter. Left out, the rule profile's.",
    )
    ownership_boundary: Literal["network", "service_fuse", "supply_meter"] | None = Field(
        default=None,
        description="Last thing that belongs to the network operator; the boundary of ownership is drawn behind it: "
        "the `network` itself, the `service_fuse`, or the `supply_meter` in the circuit of the main board. The "
        "operator's terms say which. Left out, the network is assumed with a `transformer` of the site, else the "
        "service fuse where there is one; otherwise, and under NEC 690 without a transformer, none is drawn.",
    )
    contracted_power: Annotated[Quantity, Units("VA", "W"), Usual("30 kVA")] | None = Field(
        default=None, description="Power that the contract with the network operator or supplier allows to be drawn."
    )
    supply_point: Text | None = Field(default=None, description="Number of the supply point, as on the bill.")
    other_supply_points: list[Text] = Field(
        default=[],
        description="Numbers or names of further connections of the site to the network, which stay live when this one "
        "is isolated and are not on this drawing; printed among the cautions. Those on the drawing stand under "
        "`further_supplies`.",
    )
    operator: Text | None = Field(default=None, description="Network operator.")
    country: Annotated[str, StringConstraints(pattern=r"^[A-Z]{2}$"), AfterValidator(known_country)] | None = Field(
        default=None,
        description="Two-letter country code (ISO 3166-1); printed, kept for the notification, and it selects the "
        "country's notes on arc faults, shutdown and isolation, and its grid rules: procedure, settings, notices.",
    )
    grid_rules: Text | None = Field(
        default=None,
        description="Other grid rules than those of the country as they are: `generic`, what EN 50549-1 says, for a "
        "country without; or a TOML file beside the spec with what an operator or town has otherwise, entry by entry.",
    )

    @model_validator(mode="after")
    def _highest_voltage_is_on_the_basis_of_the_nominal(self) -> Supply:
        if self.voltage_v and self.voltage_max_v and self.voltage_max_v < _LEAST_SHARE * self.voltage_v:
            message = (
                f"a highest voltage of {self.voltage_max_v:g} V does not go with a nominal one of {self.voltage_v:g} V"
            )
            raise fault(message, "write both between lines, or with one phase both to neutral", "voltage_max")
        return self

    @model_validator(mode="after")
    def _country_has_grid_rules(self) -> Supply:
        if self.country is not None and self.grid_rules is None and self.country not in known():
            remedy = f"write `grid_rules: {GENERIC}` beside it; {listed()}"
            raise fault(f"there are no grid rules for `{self.country}`", remedy, "country")
        return self

    @model_validator(mode="after")
    def _strokes_hit_an_overhead_line(self) -> Supply:
        if self.direct_strokes and not self.overhead:
            message = "direct strokes to an overhead line are reckoned with, and the supply is not `overhead`"
            raise fault(message, "write `overhead: true`, or leave `direct_strokes` out", "direct_strokes")
        return self

    @model_validator(mode="after")
    def _one_phase_is_split(self) -> Supply:
        if self.split_phase and self.phases != 1:
            message = "a split phase is one phase, and the supply has three"
            raise fault(message, "write `phases: 1`, or leave `split_phase` out", "split_phase")
        return self

    @model_validator(mode="after")
    def _neutral_is_there_where_something_is_made_of_it(self) -> Supply:
        if self.neutral != "not_distributed":
            return self
        if self.split_phase:
            message = "a split phase has a neutral in the middle, and none is distributed"
            raise fault(message, "leave `neutral` out, or `split_phase`", "neutral")
        if self.earthing_system == "TN-C-S":
            message = "a TN-C-S system brings neutral and protective conductor in one, and no neutral is distributed"
            raise fault(message, "write `earthing_system: TN-S`, TT or IT, or leave `neutral` out", "neutral")
        return self

    @property
    def frequency_said(self) -> bool:
        """Tell whether the spec says the frequency, itself or by the country."""
        return "frequency_hz" in self.model_fields_set or self.country is not None

    def doubts(self) -> Iterator[Doubt]:
        """Yield what is unusual, and a frequency that the networks of the country do not have."""
        found = list(super().doubts())
        yield from found
        usual_hz = usual_frequency_hz(self.country)
        if usual_hz is None or any(doubt.key == "frequency" for doubt in found):
            return
        usual = Usual("50 Hz", among=(f"{usual_hz:g} Hz",))
        asked = "is the country or the frequency wrong?"
        if "frequency_hz" in self.model_fields_set and (
            doubt := doubt_of("frequency", self.frequency_hz, "Hz", usual, asked)
        ):
            yield doubt

    @property
    def follows_three_wires(self) -> bool:
        """Return whether nothing is said of a neutral, and the voltage is one that networks without it have."""
        three = self.phases == 3 and self.earthing_system != "TN-C-S"
        return self.neutral is None and three and self.voltage_v in _THREE_WIRE_V

    @property
    def has_neutral(self) -> bool:
        """Return whether a neutral is distributed: as given, else by the voltage."""
        return self.neutral != "not_distributed" and not self.follows_three_wires


def usual_voltage_v(supply: Supply, in_north_america: bool) -> float:
    """Return the usual nominal voltage of a kind of supply (IEC 60038:2009 Table 1). [V]"""
    if supply.split_phase:
        return 240.0
    if in_north_america:
        return 208.0 if supply.phases == 3 else 120.0
    return 400.0 if supply.phases == 3 else 230.0
