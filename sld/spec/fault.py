"""How a block refuses values that do not fit together."""

from __future__ import annotations

from pydantic_core import PydanticCustomError

__all__ = ["FAULT", "fault"]

FAULT = "fault"


def fault(message: str, remedy: str, key: str = "") -> PydanticCustomError:
    """Return the error for a validator of a block to raise.

    key: the key of the block to point at; one of a block inside it is written `block.key`.
    """
    return PydanticCustomError(FAULT, "{message}", {"message": message, "remedy": remedy, "key": key})
