"""Settings of the network and plant protection: sets by name, and what each of them says for one function."""

from __future__ import annotations

from enum import Enum
from typing import Annotated, Literal

from pydantic import Field

from sld.grid.entry import Condition, Entry
from sld.grid.evidence import Line, Word
from sld.words import Phrase, phrase

__all__ = ["ASKED_FOR", "Function", "Setting", "SettingsSet", "same_set"]


class Function(Enum):
    """A function of the protection at the interface. The value: the word of a country file."""

    UNDER_VOLTAGE = "under_voltage"
    UNDER_VOLTAGE_2 = "under_voltage_2"
    OVER_VOLTAGE = "over_voltage"
    OVER_VOLTAGE_2 = "over_voltage_2"
    OVER_VOLTAGE_3 = "over_voltage_3"
    MEAN_OVER_VOLTAGE = "mean_over_voltage"
    UNDER_FREQUENCY = "under_frequency"
    UNDER_FREQUENCY_2 = "under_frequency_2"
    OVER_FREQUENCY = "over_frequency"
    OVER_FREQUENCY_2 = "over_frequency_2"
    FREQUENCY_CHANGE = "frequency_change"
    RECONNECTION = "reconnection"

    @property
    def phrase(self) -> Phrase:
        """Return what it is called."""
        return _FUNCTIONS[self]


_FUNCTIONS = {
    Function.UNDER_VOLTAGE: phrase("Undervoltage U<"),
    Function.UNDER_VOLTAGE_2: phrase("Undervoltage U<<"),
    Function.OVER_VOLTAGE: phrase("Overvoltage U>"),
    Function.OVER_VOLTAGE_2: phrase("Overvoltage U>>"),
    Function.OVER_VOLTAGE_3: phrase("Overvoltage U>>>"),
    Function.MEAN_OVER_VOLTAGE: phrase("Overvoltage, 10-minute mean"),
    Function.UNDER_FREQUENCY: phrase("Underfrequency f<"),
    Function.UNDER_FREQUENCY_2: phrase("Underfrequency f<<"),
    Function.OVER_FREQUENCY: phrase("Overfrequency f>"),
    Function.OVER_FREQUENCY_2: phrase("Overfrequency f>>"),
    Function.FREQUENCY_CHANGE: phrase("Rate of change of frequency"),
    Function.RECONNECTION: phrase("Wait before reconnection"),
}

ASKED_FOR = (
    Function.UNDER_VOLTAGE,
    Function.OVER_VOLTAGE,
    Function.UNDER_FREQUENCY,
    Function.OVER_FREQUENCY,
    Function.RECONNECTION,
)
"""What every set has: to be written down where its values are not known here."""


class SettingsSet(Entry):
    """A set of settings, by the name that operators and inverters have for it. when: as of a limit."""

    called: Line
    when: tuple[Condition, ...] = ()


class Setting(Entry):
    """What sets say for one function. sets: names of the file's sets. time_s: the delay or the longest time.

    value: in `unit`, where `pu` is a multiple of the nominal voltage to neutral.
    """

    sets: Annotated[tuple[Word, ...], Field(min_length=1)]
    function: Function
    value: Annotated[float, Field(gt=0)]
    unit: Literal["pu", "V", "Hz", "Hz/s", "s"]
    time_s: Annotated[float, Field(gt=0)] | None = None

    def of(self, nominal_v: float) -> float:
        """Return the value where it is a multiple of the nominal voltage. nominal_v: to neutral. [V]"""
        return self.value * nominal_v


def same_set(called: str, written: str) -> bool:
    """Return whether somebody who writes a name means a set: signs and cases aside, its name, or that and more."""
    return _plain(written).startswith(_plain(called))


def _plain(name: str) -> str:
    return "".join(sign for sign in name.casefold() if sign.isalnum())
