"""DC devices that neither protect nor switch load by hand: connectors, disconnectors, shutdown, insulation monitor."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from sld.spec.blocks.block import Amperes, Ohms, Text, Volts
from sld.spec.blocks.installed import Installed
from sld.spec.usual import Usual

__all__ = ["BranchConnector", "DcDisconnector", "InsulationMonitor", "PlugConnector", "RapidShutdown"]


class DcDisconnector(Installed):
    """A DC disconnector: it isolates, but must not be opened under load, so it takes the place of no isolator."""

    kind: Literal["disconnector"]
    rated_voltage_v: Annotated[Volts, Usual("1000 V", "20 V", "2 kV")] | None = Field(
        default=None, description="Rated voltage. Left out, the least it must be is printed."
    )
    rated_current_a: Annotated[Amperes, Usual("32 A", "1 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current. Left out, the least it must be is printed."
    )


class PlugConnector(Installed):
    """A pair of DC plug connectors, one for each pole. Not to be parted under load."""

    kind: Literal["plug_connector"]
    rated_voltage_v: Annotated[Volts, Usual("1000 V", "20 V", "2 kV")] | None = Field(
        default=None, description="Rated voltage. Left out, the least it must be is printed."
    )
    rated_current_a: Annotated[Amperes, Usual("32 A", "1 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current. Left out, the least it must be is printed."
    )
    mated_with: Text | None = Field(
        default=None,
        description="Make and model of the other half where it is another, for example that of the modules. Left out, "
        "both halves are of one type of one maker.",
    )


class BranchConnector(Installed):
    """A pair of branch (Y) connectors, one for each pole, that joins equal strings into one pair of conductors."""

    kind: Literal["branch_connector"]
    strings: Annotated[int, Field(ge=2, le=8)] = Field(
        default=2, description="Strings that each pair joins; what follows carries the current of all of them."
    )
    rated_voltage_v: Annotated[Volts, Usual("1500 V", "20 V", "2 kV")] | None = Field(
        default=None, description="Rated voltage. Left out, the least it must be is printed."
    )
    rated_current_a: Annotated[Amperes, Usual("30 A", "1 A", "200 A")] | None = Field(
        default=None, description="Rated current of its common side. Left out, the least it must be is printed."
    )


class RapidShutdown(Installed):
    """A remote-controlled switch that takes the voltage off DC conductors, for example for the fire service."""

    kind: Literal["rapid_shutdown"]
    rated_voltage_v: Annotated[Volts, Usual("1000 V", "20 V", "2 kV")] | None = Field(
        default=None, description="Rated voltage. Left out, the least it must be is printed."
    )
    rated_current_a: Annotated[Amperes, Usual("32 A", "1 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current. Left out, the least it must be is printed."
    )
    operated_from: Text | None = Field(
        default=None, description="Where or by what it is operated, for example: at the meter, by loss of the supply."
    )


class InsulationMonitor(Installed):
    """An insulation monitoring device between the DC conductors and earth, where the inverter has none of its own."""

    kind: Literal["insulation_monitor"]
    rated_voltage_v: Annotated[Volts, Usual("1000 V", "20 V", "2 kV")] | None = Field(
        default=None, description="Highest system voltage. Left out, the least it must be is printed."
    )
    alarm_resistance_ohm: Annotated[Ohms, Usual("40 kohm", "500 ohm", "50 Mohm")] | None = Field(
        default=None,
        description="Insulation resistance below which it reports. Left out, the least it must be set to is printed.",
    )
