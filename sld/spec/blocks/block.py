"""What all blocks of the spec share: strictness, and the rule from attribute name to key.

A key of the spec is a plain word (`length`); the attribute that holds its value ends in the unit it is held in
(`length_m`). The suffixes below are the only ones in use; `Block` drops them to get the key.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Annotated, Literal, NamedTuple

from pydantic import BaseModel, ConfigDict, Field, StringConstraints

from sld.spec.units import Quantity, Unit, Units
from sld.spec.usual import Doubt, Usual, doubt_of, marks_of

__all__ = [
    "AmpereSquareSeconds",
    "Amperes",
    "Block",
    "Celsius",
    "Kiloamperes",
    "Line",
    "Metres",
    "Named",
    "Ohms",
    "Placed",
    "Ranged",
    "SquareMillimetres",
    "Status",
    "Text",
    "ThermalResistivity",
    "Voltamperes",
    "Volts",
    "Watts",
    "Wired",
    "key_of",
    "usual_of",
]

_UNIT_SUFFIXES = (
    "_percent_per_k",
    "_deg",
    "_kg",
    "_per_km2_year",
    "_k_m_per_w",
    "_percent",
    "_a2s",
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
    "_s",
)


def key_of(attribute: str) -> str:
    """Return the key of the spec for an attribute: `length_m` -> `length`."""
    for suffix in _UNIT_SUFFIXES:
        if attribute.endswith(suffix):
            return attribute.removesuffix(suffix)
    return attribute


class Ranged(NamedTuple):
    """A key that holds a quantity: its attribute, what is usual for it, and the unit that this is compared in."""

    attribute: str
    usual: Usual
    unit: str


class Block(BaseModel):
    """A block of the spec: unknown keys refused, no silent conversions, frozen once read."""

    model_config = ConfigDict(
        defer_build=True,  # most are only parts of others, which are built with them inside
        extra="forbid",
        strict=True,
        frozen=True,
        allow_inf_nan=False,
        alias_generator=key_of,
        populate_by_name=False,
    )

    def doubts(self) -> Iterator[Doubt]:
        """Yield what is unusual in the values of this block; a block whose values belong together adds to it."""
        for key, (attribute, usual, unit) in usual_of(type(self)).items():
            value = getattr(self, attribute)
            if isinstance(value, Quantity):
                value = value.value if value.unit == unit else None
            if value is not None and (doubt := doubt_of(key, value, unit, usual)):
                yield doubt


@cache
def usual_of(block: type[Block]) -> dict[str, Ranged]:
    """Return the keys of a block that hold a quantity, each with its attribute, what is usual, and its (first) unit."""
    found = {}
    for attribute, field in block.model_fields.items():
        marks = list(marks_of(field))
        usual = next((mark for mark in marks if isinstance(mark, Usual)), None)
        unit = next(
            (
                mark.units[0] if isinstance(mark, Units) else mark.unit
                for mark in marks
                if isinstance(mark, Unit | Units)
            ),
            "",
        )
        if usual is not None:
            found[field.alias or attribute] = Ranged(attribute, usual, unit)
    return found


Text = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=400)]
Status = Literal["new", "existing", "future"]

AmpereSquareSeconds = Annotated[float, Unit("A2s", minimum=0, exclusive_minimum=True)]
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


Line = Literal["L1", "L2", "L3", "L1-L2", "L2-L3", "L3-L1"]
"""The line conductor of a single-phase circuit on several, or the two that it works between."""


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
    torque_nm: (
        Annotated[float, Unit("Nm", minimum=0, exclusive_minimum=True), Usual("2.5 Nm", "0.1 Nm", "200 Nm")] | None
    ) = Field(default=None, description="Tightening torque of its terminals, from the maker's manual.")
    strip_length_mm: (
        Annotated[float, Unit("mm", minimum=0, exclusive_minimum=True), Usual("12 mm", "2 mm", "100 mm")] | None
    ) = Field(default=None, description="Stripping length of the conductors at its terminals, from the maker's manual.")
    terminal_section_max_mm2: Annotated[SquareMillimetres, Usual("16 mm2", "0.5 mm2", "1200 mm2")] | None = Field(
        default=None, description="Largest section of a conductor that its terminals take, by its maker."
    )
