"""What every device of a circuit can say about itself."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, StringConstraints

from sld.spec.blocks.block import Amperes, Kiloamperes, Placed, Text, Wired
from sld.spec.usual import Usual

__all__ = ["BackedUp", "Installed"]


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


class BackedUp(Installed):
    """A device whose maker names a fuse or circuit-breaker that helps it through a short circuit."""

    conditional_current_ka: Annotated[Kiloamperes, Usual("10 kA", "0.5 kA", "200 kA")] | None = Field(
        default=None,
        description="Rated conditional short-circuit current (Inc of an RCD): what it stands, a circuit-breaker also "
        "breaks, together with the fuse or circuit-breaker that its maker names.",
    )
    backup_fuse_max_a: Annotated[Amperes, Usual("63 A", "6 A", "1.25 kA")] | None = Field(
        default=None, description="Largest fuse or circuit-breaker with which it has its conditional current."
    )
