"""Whether a drawing is meant to be handed in: only then is its paperwork judged, a sketch needs none."""

from __future__ import annotations

from sld.model.system import System

__all__ = ["handed_in"]

_NOT_YET = ("sketch", "draft", "concept", "preliminary", "study")


def handed_in(system: System) -> bool:
    """Return whether the spec says what the drawing is handed in for, or that the network operator reads it."""
    status = (system.project.document_status or "").casefold()
    if system.drawing.reader == "operator":
        return True
    return bool(status) and not any(word in status for word in _NOT_YET)
