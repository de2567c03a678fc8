"""What a section may have grown for, where a later step asks."""

from __future__ import annotations

from sld.words import phrase

__all__ = ["DISCONNECTION", "FAULT"]

DISCONNECTION = phrase("disconnection")
FAULT = phrase("fault")
