"""The data classes of the package: frozen for the type checker, as quick to make as any other when they run.

What a frozen data class of the library costs is its guard: each field is set past it by a call, so that making a value
of three fields takes three times as long, and a drawing makes 30,000 of them. mypy, which reads this as the decorator
of the library, refuses every assignment to a field, and `tests/house` every way around it. What is handed out to others
(`sld/door/`) keeps the guard and is made by the library's own.

The library also compiles six methods for each class, which at 300 classes is a ninth of a command's start. Here it
compiles `__init__` alone; the others are the same functions for all classes. And its `replace` asks each field whether
it may be replaced, which takes three times as long as to make the value.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

__all__ = ["dataclass", "replace"]

if TYPE_CHECKING:
    from dataclasses import dataclass, replace
else:
    import dataclasses
    from collections.abc import Callable
    from operator import attrgetter

    def _shown(value: object) -> str:
        """Return a value as the library shows it."""
        fields = (f"{field.name}={getattr(value, field.name)!r}" for field in dataclasses.fields(value) if field.repr)
        return f"{type(value).__qualname__}({', '.join(fields)})"

    def _comparison(cls: type) -> dict[str, Callable[..., Any]]:
        """Return the methods for a class by which values with equal fields are equal.

        All that is compared is hashed: no field may ask for another hash.
        """
        names = [field.name for field in dataclasses.fields(cls) if field.compare]
        of_fields = attrgetter(*names) if names else lambda _: ()

        def equal(one: object, other: object) -> bool:
            return of_fields(one) == of_fields(other) if other.__class__ is one.__class__ else NotImplemented

        return {"__eq__": equal, "__hash__": lambda one: hash(of_fields(one))}

    def dataclass(*, frozen: bool = False, eq: bool = True, **options: Any) -> Callable[[type], type]:
        """Return the decorator of the library; for a frozen class without the guard, and with the methods from here."""
        if not frozen:
            return dataclasses.dataclass(eq=eq, **options)

        def made(cls: type) -> type:
            own = dict(vars(cls))
            whole = dataclasses.dataclass(eq=False, repr=False, **options)(cls)
            for name, method in ({"__repr__": _shown} | (_comparison(whole) if eq else {})).items():
                if own.get(name) is None:  # Python sets __hash__ to None where a class has its own __eq__
                    setattr(whole, name, method)
            if "__init__" not in own and _is_plain(whole):
                _IN_ORDER[whole] = attrgetter(*(field.name for field in dataclasses.fields(whole)))
            return whole

        return made

    _IN_ORDER: dict[type, Callable[[object], tuple[object, ...]]] = {}
    """Of each plain class its fields, as it takes them: as many entries as there are classes."""

    def _is_plain(cls: type) -> bool:
        """Return whether a class takes all its fields in their order, keeps no others, and does nothing more."""
        fields = dataclasses.fields(cls)
        in_order = all(field.init and not field.kw_only for field in fields)
        keeps_others = cls.__dictoffset__ != 0  # without slots, or below a class without them
        return in_order and len(fields) > 1 and not keeps_others and not hasattr(cls, "__post_init__")

    def replace(value: Any, /, **changes: object) -> Any:
        """Return a value with other values of some fields.

        Raises AttributeError or TypeError for a field that there is not, ValueError for one that is not handed over.
        """
        in_order = _IN_ORDER.get(type(value))
        if in_order is None:
            return dataclasses.replace(value, **changes)
        changed = type(value)(*in_order(value))
        for name, new in changes.items():
            setattr(changed, name, new)
        return changed
