"""What is said of a kind of device in one place."""

from __future__ import annotations

from typing import Any, Generic, TypeVar

from sld.frozen import dataclass
from sld.spec.blocks.block import Block
from sld.words import Phrase

__all__ = ["Form", "Kind", "Role", "Trait"]

Values = TypeVar("Values", covariant=True)


class Trait(Generic[Values]):
    """What a device may be asked for, its kind or a role; `Values` is what the answer is certain to have."""

    __slots__ = ()


@dataclass(frozen=True, slots=True, eq=False)
class Role(Trait[Values]):
    """What devices of several kinds do in an installation. name: as it reads after `a device that`."""

    name: str


AnyRole = Role[Any]
NO_ROLES: frozenset[AnyRole] = frozenset()


@dataclass(frozen=True, slots=True, eq=False)
class Form:
    """What differs from the row of the kind where the spec gives one value to one field; None is as in the row.

    more_roles: besides those of the kind.
    """

    field: str
    value: object
    word: Phrase | None = None
    several: Phrase | None = None
    symbol: str | None = None
    family: str | None = None
    more_roles: frozenset[AnyRole] = NO_ROLES


@dataclass(frozen=True, slots=True, eq=False)
class Kind(Trait[Values]):
    """One kind of device.

    name: the `kind` of the spec where it has one. letters: class after IEC 81346-2. word: as it is printed. symbol: in
    the catalogue; empty where it depends on more than the block, or there is none. block: that the spec gives it as.
    roles: what it does. family: series of an overcurrent device whose tripping it follows. several: the words for a
    number of them, which is left at 0, for apparatus. forms: where the values given make a difference; the first that
    fits counts.
    """

    name: str
    letters: str
    word: Phrase
    symbol: str = ""
    block: type[Block] | None = None
    roles: frozenset[AnyRole] = NO_ROLES
    family: str = ""
    several: Phrase | None = None
    forms: tuple[Form, ...] = ()

    def _forms(self, given: object) -> list[Form]:
        return [form for form in self.forms if getattr(given, form.field) == form.value]

    def word_of(self, given: object) -> Phrase:
        """Return the word for a device with these values."""
        return next((form.word for form in self._forms(given) if form.word is not None), self.word)

    def several_of(self, given: object) -> Phrase | None:
        """Return the words for several devices with these values."""
        return next((form.several for form in self._forms(given) if form.several is not None), self.several)

    def symbol_of(self, given: object) -> str:
        """Return the name of the symbol of a device with these values."""
        return next((form.symbol for form in self._forms(given) if form.symbol is not None), self.symbol)

    def family_of(self, given: object) -> str:
        """Return the series of overcurrent devices that one with these values is of, empty for other devices."""
        return next((form.family for form in self._forms(given) if form.family is not None), self.family)

    def has(self, trait: Trait[Any], given: object) -> bool:
        """Return whether a device with these values is of the kind, or has the role."""
        if trait is self or trait in self.roles:
            return True
        return bool(self.forms) and any(trait in form.more_roles for form in self._forms(given))
