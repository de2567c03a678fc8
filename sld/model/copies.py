"""Equal inverters of one block with a count: the first is put together, the others are its copies under other names.

What is rated and checked of the first holds for its copies, because nothing of the spec tells them apart.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import field, fields
from functools import lru_cache

from sld.frozen import dataclass
from sld.model.assumed import Assumption
from sld.model.device import Device, InverterUnit, StringGroup
from sld.spec.document import Spec
from sld.spec.names import installed, named_blocks
from sld.words import Phrase
from sld.words.names import renamed

__all__ = ["Copy", "Original", "said_again", "told_apart"]


@dataclass(frozen=True, slots=True)
class Copy:
    """One of several equal inverters after the first, with all that belongs to it.

    key: of the inverter. first: key of the first one. number: of the copy, the first being 1. designations: of the
    inverter and its junction boxes by those of the first. enclosures: keys of the boxes by those of the first.
    """

    key: str
    first: str
    number: int
    designations: Mapping[str, str]
    enclosures: Mapping[str, str]
    _pattern: re.Pattern[str] = field(repr=False)

    @classmethod
    def of(cls, first: str, key: str, number: int, names: Mapping[str, str], boxes: Mapping[str, str]) -> Copy:
        """Return a copy. names: designations by those of the first. boxes: keys by those of the first."""
        return cls(key, first, number, names, boxes, _words(tuple(names)))

    def key_of(self, key: str) -> str:
        """Return the key of what the first one has under a key; what belongs to another keeps its own."""
        rest = key[len(self.first) :]
        return f"{self.key}{rest}" if key.startswith(self.first) and rest[:1] in ("", ".") else key

    def named(self, text: str) -> str:
        """Return a text with the designations of the copy for those of the first."""
        return self._pattern.sub(lambda found: self.designations[found[0]], text)


@lru_cache(maxsize=64)
def _words(names: tuple[str, ...]) -> re.Pattern[str]:
    """Return what finds designations as words: `-TB1` in `-TB1-FC1` and `Ib(-TB1)`, not in `-TB12`; `-XD1` not in
    `-TB1-XD1`."""
    return re.compile(rf"(?<![A-Za-z0-9])(?:{'|'.join(map(re.escape, names))})(?![A-Za-z0-9])")


def told_apart(spec: Spec) -> set[str]:
    """Return the names of inverters of which something of the spec speaks, and which are not equal to others for it."""
    found: set[object] = {battery.inverter for battery in spec.batteries.values()}
    found |= {board.fed_from_backup for board in spec.boards.values()}
    for _, device in installed(spec):
        found |= {getattr(device, "trips", None), getattr(device, "second_source", None)}
    if spec.data:
        found |= set(_texts(spec.data.model_dump()))
        of_blocks = {step.device for chain in spec.data.chains.values() for step in chain.devices}
        found -= of_blocks.intersection(spec.inverters)  # a chain goes to all of a block
        found |= {name for link in spec.data.links for name in (link.from_device, link.to_device)}
    # one that the spec gives to another device is skipped when those of a circuit are counted
    found |= {block.designation for _, block in named_blocks(spec)}
    return {each for each in found if isinstance(each, str)}


def _texts(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, Mapping):
        for each in value.values():
            yield from _texts(each)
    elif isinstance(value, list | tuple):
        for each in value:
            yield from _texts(each)


class Original:
    """A device of the first inverter, of which the copies are made."""

    def __init__(self, device: Device, first: str, designation: str) -> None:
        """first, designation: of the first inverter."""
        self._make = type(device)
        self._fields = {each.name: getattr(device, each.name) for each in fields(device)}
        self._key = device.key.removeprefix(first)
        inside = device.parent == first or device.parent.startswith(f"{first}.")
        self._parent = device.parent.removeprefix(first) if inside else None
        self._designation = device.designation.removeprefix(designation)
        self._strings: list[str] | None = None
        if isinstance(device, StringGroup):
            self._strings = [each.removeprefix(designation) for each in device.designations]

    def copied(self, copy: Copy, designation: str) -> Device:
        """Return the same device of a copy. designation: of the copy."""
        given = self._fields | {
            "key": copy.key + self._key,
            "owner": copy.key,
            "designation": designation + self._designation,
        }
        if self._parent is not None:
            given["parent"] = copy.key + self._parent
        if given["enclosure"] in copy.enclosures:
            given["enclosure"] = copy.enclosures[given["enclosure"]]
        if self._strings is not None:
            given["designations"] = tuple([designation + each for each in self._strings])
        if self._make is InverterUnit:
            given["copy"] = copy.number
        return self._make(**given)


def said_again(assumption: Assumption, copies: Sequence[Copy]) -> list[Assumption]:
    """Return what was assumed of the first inverter as it is said of each of its copies."""
    what = _said_of(assumption.what, copies[0])
    names_it = what is not assumption.what
    return [
        Assumption(
            _said_of(assumption.what, copy) if names_it else what,
            assumption.remedy,
            assumption.at,
            copy.key_of(assumption.device),
        )
        for copy in copies
    ]


def _said_of(what: Phrase, copy: Copy) -> Phrase:
    first, own = copy.first.partition(".")[2], copy.key.partition(".")[2]

    def named(text: str) -> str:
        return own if text == first else copy.named(text)

    said = renamed(what, named)
    assert isinstance(said, Phrase)
    return said
