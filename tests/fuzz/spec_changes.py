"""Changes to a spec that know its types: what stands in a field decides what is put there instead.

A change is made with a `random.Random`, so that a seed gives the same specs on every machine. Half of the specs are
changed gently: by values that their fields are likely to take, so that they come through to the drawing.
"""

from __future__ import annotations

import contextlib
import copy
import types
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from random import Random
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from sld.spec.document import Spec
from sld.spec.fields import blocks_at, example_value, fields_of
from sld.spec.units import Unit, Units

__all__ = ["changed", "places", "value_at"]

Place = tuple[str | int, ...]
Data = dict[str, Any]

NUMBERS = ["0", "-1", "1e-300", "1e-30", "1e-17", "1e-9", "1e11", "1e28", "3.7e35", "1e150", "1e308", "9" * 39, "1e400",
           "12345678.9", "1e6", "2.50000000000001", "-0", "0.1", "1", "2", "999999999999", "0.000001"]  # fmt: skip
USUAL_NUMBERS = ["0.1", "0.5", "1", "2", "2.5", "6", "10", "16", "25", "63", "100", "230", "400", "1000", "12345.678"]
POWERS = [1e-30, 1e-12, 1e-6, 1e-3, 0.1, 0.5, 2, 10, 1e3, 1e6, 1e12, 1e30]
USUAL_POWERS = [0.01, 0.1, 0.5, 0.9, 1.1, 2, 10, 100]
TEXTS = ["", " ", "\u202eABC\u202c", "\u2066x\u2069", "a\nb", "tab\there", "\U0001f600", "\u200b", "a\u00adb",
         "W" * 400, "W" * 401, "i " * 150, "<b>&amp;</b>", "$x^2$", "-TB1", "é́́", "العربية", "縦書き" * 20, "yes", "012",
         "\x1b[31m", "a\u2028b", "\ufffd", "x" * 60, "-0.26 %/K", "nan", "inf", "1,5 m", "{{ name }}"]  # fmt: skip
SHAPES: list[Any] = [None, True, 0, 1.5, "text", [], {}, [[]], [{}], {"a": 1}, [None] * 50, 10**30, -1]
COUNTS = [0, -1, 1, 2, 3, 7, 24, 99, 1000, 10**6, 10**12]


def places(data: Any, at: Place = ()) -> Iterator[tuple[Place, Any]]:
    """Yield every value of plain data with the way to it."""
    if at:
        yield at, data
    for step, inner in data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ():
        yield from places(inner, (*at, step))


def value_at(data: Any, at: Place) -> Any:
    for step in at:
        data = data[step]
    return data


def _leaves(annotation: Any, marks: tuple[Any, ...] = ()) -> Iterator[tuple[Any, tuple[Any, ...]]]:
    """Yield the plain types of an annotation with what is noted on each."""
    if hasattr(annotation, "__value__"):
        yield from _leaves(annotation.__value__, marks)
    elif get_origin(annotation) is Annotated:
        inner, *more = get_args(annotation)
        yield from _leaves(inner, (*marks, *more))
    elif get_origin(annotation) in (Union, types.UnionType):
        for part in get_args(annotation):
            yield from _leaves(part, marks)
    else:
        yield annotation, marks


@dataclass
class Changer:
    """Makes changes in the data of a spec, by chance. gentle: only such as are likely to be taken."""

    random: Random
    data: Data
    gentle: bool

    def pick(self, choices: Any) -> Any:
        return self.random.choice(list(choices))

    def some(self) -> tuple[Place, Any]:
        """Return any value with its place."""
        return self.pick(places(self.data))

    def leaf(self) -> tuple[Place, Any]:
        """Return a value that is neither a block nor a list, with its place."""
        return self.pick((at, value) for at, value in places(self.data) if not isinstance(value, dict | list))

    def put(self, at: Place, value: Any) -> None:
        value_at(self.data, at[:-1])[at[-1]] = value

    def replacement(self, at: Place, value: Any) -> Any:
        """Return another value for a place, made for its field."""
        blocks = blocks_at(Spec, self.data, at[:-1])
        field = next((fields_of(block)[at[-1]] for block in blocks if at[-1] in fields_of(block)), None)
        leaves = list(_leaves(field.annotation, tuple(field.metadata))) if field is not None else []
        choices: list[Callable[[], Any]] = [] if self.gentle and leaves else [lambda: copy.deepcopy(self.pick(SHAPES))]
        for kind, marks in leaves:
            units = [
                u for m in marks if isinstance(m, Unit | Units) for u in (m.units if isinstance(m, Units) else [m.unit])
            ]
            if units:
                choices += [lambda units=units: self.quantity(units, value)] * 6
            elif get_origin(kind) is Literal:
                choices += [lambda kind=kind: self.pick(get_args(kind))] * 4
            elif kind is bool:
                choices += [lambda: not value] * 3
            elif kind in (int, float):
                choices += [lambda: self.pick(COUNTS[2:6] if self.gentle else COUNTS)] * 4
            elif kind is str:
                choices += [lambda: self.pick(TEXTS), self.name]
        return self.pick(choices or [lambda: value])()

    def quantity(self, units: list[str], value: Any) -> Any:
        """Return a number with a unit: that of the field, and unless gentle one of another size or kind, or none."""
        powers, numbers = (USUAL_POWERS, USUAL_NUMBERS) if self.gentle else (POWERS, NUMBERS)
        unit = self.pick(units if self.gentle else [*units, *units, "kV", "mA", "%", "GW", "mm2", "furlong", ""])
        number = self.pick(numbers)
        if isinstance(value, int | float) and self.random.random() < 0.6:
            return value * self.pick(powers)
        if isinstance(value, str) and self.random.random() < 0.6:
            head, _, given = value.partition(" ")
            with contextlib.suppress(ValueError):
                number, unit = repr(float(head) * self.pick(powers)), given
        return f"{number} {unit}".strip()

    def name(self) -> str:
        """Return the name of a block of the spec."""
        found = [str(at[-1]) for at, value in places(self.data) if isinstance(value, dict) and isinstance(at[-1], str)]
        return str(self.pick(found or ["x"]))

    def replace(self) -> None:
        at, value = self.leaf()
        self.put(at, self.replacement(at, value))

    def reshape(self) -> None:
        self.put(self.some()[0], copy.deepcopy(self.pick(SHAPES)))

    def remove(self) -> None:
        at, _ = self.some()
        del value_at(self.data, at[:-1])[at[-1]]

    def add(self) -> None:
        """Add a key that a block can have and has not."""
        at, block = self.pick([((), self.data), *((a, v) for a, v in places(self.data) if isinstance(v, dict))])
        free = {key: field for kind in blocks_at(Spec, self.data, at) for key, field in fields_of(kind).items()}
        free = {key: field for key, field in free.items() if key not in block}
        if free:
            key = self.pick(sorted(free))
            example = example_value(free[key])
            block[key] = {"true": True, "1": 1, "1.0": 1.0}.get(example, example or self.pick(["x", [], {}, [{}]]))
            if self.random.random() < 0.5:
                block[key] = self.replacement((*at, key), block[key])

    def repeat(self) -> None:
        """Repeat an entry of a list, or a block under another name."""
        at, value = self.some()
        around = value_at(self.data, at[:-1])
        for _ in range(self.pick([1, 1, 2, 5])):
            if isinstance(around, list):
                around.insert(self.random.randrange(len(around) + 1), copy.deepcopy(value))
            else:
                around[f"{at[-1]} {self.random.randrange(1000)}"] = copy.deepcopy(value)

    def exchange(self) -> None:
        """Let two values change places, gently those of the same key."""
        (one, first), (other, second) = self.leaf(), self.leaf()
        if self.gentle:
            same = [(at, v) for at, v in places(self.data) if at[-1] == one[-1] and not isinstance(v, dict | list)]
            other, second = self.pick(same)
        self.put(one, second)
        self.put(other, first)

    def rename(self) -> None:
        at, _ = self.pick((at, value) for at, value in places(self.data) if isinstance(at[-1], str))
        around, key = value_at(self.data, at[:-1]), str(at[-1])
        around[self.pick([key[:-1] or "x", key.upper(), key + "s", self.pick(TEXTS)])] = around.pop(key)

    def change(self) -> None:
        """Make one change; an earlier one may have left no place for it."""
        gentle = [self.replace] * 8 + [self.add] * 2 + [self.repeat, self.exchange]
        rough = (
            [self.replace] * 6 + [self.add] * 3 + [self.repeat, self.exchange, self.remove, self.rename, self.reshape]
        )
        with contextlib.suppress(KeyError, IndexError, TypeError, AttributeError):
            self.pick(gentle if self.gentle else rough)()


def changed(data: Data, random: Random) -> Data:
    """Return a copy with one to four changes, most often one."""
    changer = Changer(random, copy.deepcopy(data), gentle=random.random() < 0.6)
    for _ in range(random.choice([1, 1, 1, 2, 2, 4])):
        changer.change()
    return changer.data
