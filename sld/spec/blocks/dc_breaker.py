"""A circuit-breaker of a DC circuit."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from sld.spec.blocks.block import Amperes, Kiloamperes, Volts
from sld.spec.blocks.installed import Installed
from sld.spec.usual import Usual

__all__ = ["DcBreaker"]


class DcBreaker(Installed):
    """A DC circuit-breaker. Nothing is chosen for it: what its maker states holds for the wiring of its poles."""

    kind: Literal["breaker"]
    construction: Literal["miniature", "moulded_case"] = Field(
        default="miniature", description="Miniature or moulded-case."
    )
    rated_current_a: Annotated[Amperes, Usual("32 A", "0.5 A", "6.3 kA")] | None = Field(
        default=None, description="Rated current. Left out, the least it must be is printed."
    )
    rated_voltage_v: Annotated[Volts, Usual("1000 V", "20 V", "2 kV")] | None = Field(
        default=None,
        description="Rated DC voltage as its poles are wired. Left out, the least it must be is printed.",
    )
    curve: Literal["B", "C", "D"] | None = Field(
        default=None, description="Tripping characteristic as its maker names it."
    )
    breaking_capacity_ka: Annotated[Kiloamperes, Usual("6 kA", "0.5 kA", "200 kA")] | None = Field(
        default=None, description="Rated DC breaking capacity at that voltage."
    )
    poles: Annotated[int, Field(ge=1, le=8)] = Field(default=2, description="Number of poles.")
    polarized: bool | None = Field(
        default=None, description="Breaks current in the marked direction only. Left out, nothing is said of it."
    )
    isolating: bool = Field(
        default=False, description="Marked by its maker as suitable for isolation, so that it is a DC isolator too."
    )
