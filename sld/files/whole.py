"""One file that appears whole or not at all."""

from __future__ import annotations

import os
from pathlib import Path

__all__ = ["write_whole"]


def write_whole(path: Path, content: bytes) -> None:
    """Write a file beside its place and then put it there; on an error what was there stays. Raises OSError."""
    path.parent.mkdir(parents=True, exist_ok=True)
    beside = path.with_name(f".{path.name}.{os.getpid()}.new")
    try:
        beside.write_bytes(content)
        os.replace(beside, path)
    except BaseException:
        beside.unlink(missing_ok=True)
        raise
