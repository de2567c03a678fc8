"""Conduits and ducts: what cables are drawn into, and what a cable says about the one it lies in."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from sld.spec.blocks.block import Block, Text
from sld.spec.units import Unit
from sld.spec.usual import Usual

__all__ = ["Conduit", "Drawn"]

Millimetres = Annotated[float, Unit("mm", minimum=0, exclusive_minimum=True)]


class Conduit(Block):
    """A conduit or duct that cables are drawn into."""

    inside_diameter_mm: Annotated[Millimetres, Usual("27 mm", "6 mm", "1000 mm")] | None = Field(
        default=None, description="Inside diameter. Left out, the fill is not computed."
    )
    trade_size: Text | None = Field(
        default=None, description="Size and kind as it is ordered: `M32 rigid`, `1 in EMT`."
    )


class Drawn(Block):
    """What a cable says about the conduit that it is drawn into."""

    conduit: Text | None = Field(default=None, description="Conduit that it is drawn into; a name of `site.conduits`.")
    outside_diameter_mm: Annotated[Millimetres, Usual("14 mm", "2 mm", "150 mm")] | None = Field(
        default=None,
        description="Outside diameter of the cable, or of one of its single conductors where it is drawn in as such.",
    )
    single_conductors: Annotated[int, Field(ge=1, le=40)] | None = Field(
        default=None,
        description="Single conductors that it is drawn in as. Left out, an AC cable is one multicore cable, a DC "
        "cable two conductors.",
    )
