"""What all blocks of the spec share: strictness, and the rule from attribute name to key.

A key of the spec is a plain word (`length`); the attribute that holds its value ends in the unit it is held in
(`length_m`). The suffixes below are the only ones in use; `Block` drops them to get the key.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, StringConstraints

from sld.spec.units import Unit

__all__ = [
    "Amperes",
    "Block",
    "Celsius",
    "Kiloamperes",
    "Metres",
    "Named",
    "Ohms",
    "Placed",
    "SquareMillimetres",
    "Status",
    "Text",
    "ThermalResistivity",
    "Voltamperes",
    "Volts",
    "Watts",
    "Wired",
    "key_of",
]

_UNIT_SUFFIXES = (
    "_percent_per_k",
    "_per_km2_year",
    "_k_m_per_w",
    "_percent",
    "_mm2",
    "_mm",
    "_ohm",
    "_kvar",
    "_va",
    "_wh",
    "_ka",
    "_ma",
    "_kv",
    "_mva",
    "_hz",
    "_bd",
    "_ms",
    "_nm",
    "_ev",
    "_w",
    "_v",
    "_a",
    "_m",
    "_c",
)


def key_of(attribute: str) -> str:
    """Return the key of the spec for an attribute: `length_m` -> `length`."""
    for suffix in _UNIT_SUFFIXES:
        if attribute.endswith(suffix):
            return attribute.removesuffix(suffix)
    return attribute


class Block(BaseModel):
    """A block of the spec: unknown keys refused, no silent conversions, frozen once read."""

    model_config = ConfigDict(
        extra="forbid", strict=True, frozen=True, allow_inf_nan=False, alias_generator=key_of, populate_by_name=False
    )


Text = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=400)]
Status = Literal["new", "existing", "future"]

Amperes = Annotated[float, Unit("A", minimum=0, exclusive_minimum=True)]
Celsius = Annotated[float, Unit("°C", minimum=-90, maximum=150)]
Kiloamperes = Annotated[float, Unit("kA", minimum=0, exclusive_minimum=True)]
Metres = Annotated[float, Unit("m", minimum=0)]
Ohms = Annotated[float, Unit("ohm", minimum=0)]
SquareMillimetres = Annotated[float, Unit("mm2", minimum=0, exclusive_minimum=True)]
ThermalResistivity = Annotated[float, Unit("K·m/W", minimum=0, exclusive_minimum=True)]
Voltamperes = Annotated[float, Unit("VA", minimum=0, exclusive_minimum=True)]
Volts = Annotated[float, Unit("V", minimum=0, exclusive_minimum=True)]
Watts = Annotated[float, Unit("W", minimum=0, exclusive_minimum=True)]


class Named(Block):
    """What everything that is drawn can say about itself."""

    name: Text | None = Field(default=None, description="What people call it; printed above the symbol.")
    designation: Annotated[str, StringConstraints(pattern=r"^[-=+][A-Z0-9][A-Z0-9.=+-]*$", max_length=24)] | None = (
        Field(
            default=None,
            description="Reference designation to print instead of the one that is given by rule, for example `-QB5`.",
        )
    )
    location: Text | None = Field(
        default=None, description="Where it is mounted; a name of `site.locations` if those are given."
    )
    note: Text | None = Field(default=None, description="A short remark, printed in a schedule or among the notes.")


class Placed(Named):
    """What every device of the installation can say about itself."""

    status: Status = Field(default="new", description="new, existing or future; told apart on the drawing.")
    make: Text | None = Field(default=None, description="Manufacturer.")
    model: Text | None = Field(default=None, description="Model name.")


class Wired(Block):
    """What everything with terminals can say about them; printed in a table for those who wire."""

    terminals: Text | None = Field(
        default=None, description="Which conductor goes to which terminal, for those who wire: `L1 1, L2 3, L3 5, N 7`."
    )
    torque_nm: Annotated[float, Unit("Nm", minimum=0, exclusive_minimum=True)] | None = Field(
        default=None, description="Tightening torque of its terminals, from the maker's manual."
    )
    strip_length_mm: Annotated[float, Unit("mm", minimum=0, exclusive_minimum=True)] | None = Field(
        default=None, description="Stripping length of the conductors at its terminals, from the maker's manual."
    )
