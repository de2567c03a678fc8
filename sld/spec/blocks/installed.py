"""What every device of a circuit can say about itself."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, StringConstraints

from sld.spec.blocks.block import Placed, Text, Wired

__all__ = ["Installed"]


class Installed(Placed, Wired):
    """A device of a circuit."""

    id: Annotated[str, StringConstraints(pattern=r"^[A-Za-z][A-Za-z0-9_-]*$", max_length=40)] | None = Field(
        default=None, description="A name to refer to this device by from a data chain or link."
    )
    enclosure: Text | None = Field(
        default=None,
        description="Board (AC, and at a battery) or junction box (DC) it sits in. Left out, it follows from the place "
        "in the circuit.",
    )
    type: Text | None = Field(
        default=None,
        description="Name under `types.ac_devices`, `types.dc_devices` or, at a battery, `types.battery_devices` of a "
        "type of the same kind; it gives the values left out here.",
    )
