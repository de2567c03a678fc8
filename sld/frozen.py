"""The data classes of the package: frozen for the type checker, as quick to make as any other when they run.

What a frozen data class of the library costs is its guard: each field is set past it by a call, so that making a value
of three fields takes three times as long, and a drawing makes 30,000 of them. mypy, which reads this as the decorator
of the library, refuses every assignment to a field, and `tests/house` every way around it. What is handed out to others
(`sld/door/`) keeps the guard and is made by the library's own.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

__all__ = ["dataclass"]

if TYPE_CHECKING:
    from dataclasses import dataclass
else:
    import dataclasses
    from collections.abc import Callable

    def _shown(value: object) -> str:
        """Return a value as the library would show it. One function for all: the library compiles one a class."""
        fields = (f"{field.name}={getattr(value, field.name)!r}" for field in dataclasses.fields(value) if field.repr)
        return f"{type(value).__qualname__}({', '.join(fields)})"

    def dataclass(*, frozen: bool = False, eq: bool = True, **options: Any) -> Callable[[type], type]:
        """Return the decorator of the library, for a frozen class without the guard, with the hash of its fields."""
        if not frozen:
            return dataclasses.dataclass(eq=eq, **options)

        def made(cls: type) -> type:
            own = vars(cls)
            if "__repr__" not in own and options.get("repr", True):
                cls.__repr__ = _shown
            return dataclasses.dataclass(eq=eq, unsafe_hash=eq and "__hash__" not in own, **options)(cls)

        return made
