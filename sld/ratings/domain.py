"""The range that an input must lie in before a formula means anything."""

from __future__ import annotations

from math import isfinite

__all__ = ["require_not_negative", "require_phase_count", "require_positive"]


def require_positive(**inputs: float) -> None:
    """Raise ValueError, naming the input, for one that is not a finite number above zero."""
    for name, value in inputs.items():
        if not (isfinite(value) and value > 0):
            raise ValueError(f"{name} must be above zero, not {value}")


def require_not_negative(**inputs: float) -> None:
    """Raise ValueError, naming the input, for one that is not a finite number of at least zero."""
    for name, value in inputs.items():
        if not (isfinite(value) and value >= 0):
            raise ValueError(f"{name} must not be negative: {value}")


def require_phase_count(phase_count: int) -> None:
    """Raise ValueError for anything but one or three phases."""
    if phase_count not in (1, 3):
        raise ValueError(f"phase_count must be 1 or 3, not {phase_count}")
