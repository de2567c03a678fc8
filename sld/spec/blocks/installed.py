"""What every device of a circuit can say about itself."""

from __future__ import annotations

from pydantic import Field

from sld.spec.blocks.block import Placed, Text

__all__ = ["Installed"]


class Installed(Placed):
    """A device of a circuit."""

    enclosure: Text | None = Field(
        default=None,
        description="Board (AC) or junction box (DC) it sits in. Left out, it follows from the place in the circuit.",
    )
    type: Text | None = Field(
        default=None,
        description="Name under `types.ac_devices` or `types.dc_devices` of a type of the same kind; it gives the "
        "values left out here.",
    )
