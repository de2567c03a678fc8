"""Which tables there are, each with its edition and the digest of its file: what a later comparison has to know."""

from __future__ import annotations

import hashlib
from functools import cache
from pathlib import Path

from sld.tables.table import table

__all__ = ["versions"]


@cache
def versions() -> dict[str, dict[str, str]]:
    """Return edition, status and digest (SHA-256) of every table by its name."""
    found = {}
    for path in sorted(Path(__file__).parent.glob("*.csv")):
        front = table(path.stem).front
        digest = hashlib.sha256(path.read_bytes()).hexdigest()
        found[path.stem] = {"edition": front["edition"], "status": front["status"], "sha256": digest}
    return found
