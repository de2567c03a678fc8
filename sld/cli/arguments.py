"""The command group: a mistake in the command line is told with its words made visible."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from typer.core import TyperGroup

from sld.spec.visible import visible

__all__ = ["Commands"]


@contextmanager
def _made_visible() -> Iterator[None]:
    """Let the library quote arguments as they are shown elsewhere, so that a file name cannot steer the terminal."""
    try:
        yield
    except Exception as wrong:
        if isinstance(getattr(wrong, "message", None), str):  # a mistake that the library tells itself
            wrong.message = visible(wrong.message)  # type: ignore[attr-defined]
        raise


class Commands(TyperGroup):
    """The commands of the program."""

    def make_context(self, *arguments: Any, **more: Any) -> Any:
        """Read the options before the command."""
        with _made_visible():
            return super().make_context(*arguments, **more)

    def invoke(self, *arguments: Any, **more: Any) -> Any:
        """Read the command with its options, and run it."""
        with _made_visible():
            return super().invoke(*arguments, **more)
