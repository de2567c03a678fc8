"""A further supply point: another connection of the site to the public network, drawn on the same drawing."""

from __future__ import annotations

from pydantic import Field

from sld.spec.blocks.block import Block, Text
from sld.spec.blocks.earthing import Earthing
from sld.spec.blocks.supply import Supply

__all__ = ["FurtherSupply"]


class FurtherSupply(Block):
    """A supply point besides the one under `supply`: what it feeds names it under `fed_from`."""

    name: Text | None = Field(default=None, description="What it is called on the sheet. Left out, its name here.")
    supply: Supply = Field(description="The connection, as `supply` of the spec.")
    earthing: Earthing | None = Field(
        default=None,
        description="Earthing arrangement of what is behind it, with a main earthing terminal of its own. Left out: "
        "assumed.",
    )
