"""How the key columns of tables are said on a drawing: `section_mm2` 6 is `section 6 mm²`.

Every key column that holds numbers has an entry; a test finds one without.
"""

from __future__ import annotations

from sld.frozen import replace
from sld.words import Phrase, Sayable, amount, counted, of_count, phrase
from sld.words.cell import of_cell

__all__ = ["in_words"]

_DIGITS = 9
"""As many as a file gives."""

_AMOUNTS: dict[str, tuple[Phrase, str]] = {
    "active_mm2": (phrase("line conductor {amount}"), "mm²"),
    "apparent_power_up_to_kva": (phrase("apparent power up to {amount}"), "kVA"),
    "depth_m": (phrase("depth {amount}"), "m"),
    "device_a": (phrase("device {amount}"), "A"),
    "device_type": (phrase("device type {amount}"), ""),
    "direct_current_up_to_ma": (phrase("direct current up to {amount}"), "mA"),
    "from_v": (phrase("from {amount}"), "V"),
    "i_k_up_to_ka": (phrase("Ik up to {amount}"), "kA"),
    "i_n_a": (phrase("In {amount}"), "A"),
    "i_n_to_a": (phrase("In to {amount}"), "A"),
    "i_n_up_to_a": (phrase("In up to {amount}"), "A"),
    "line_above_mm2": (phrase("line above {amount}"), "mm²"),
    "multiple": (phrase("{amount} times"), ""),
    "neutral_above_mm2": (phrase("neutral above {amount}"), "mm²"),
    "p_array_up_to_kw": (phrase("array power up to {amount}"), "kW"),
    "primary_a": (phrase("primary {amount}"), "A"),
    "resistivity_k_m_per_w": (phrase("resistivity {amount}"), "K·m/W"),
    "section_mm2": (phrase("section {amount}"), "mm²"),
    "size": (phrase("size {amount}"), ""),
    "t_ambient_c": (phrase("ambient {amount}"), "°C"),
    "t_from_c": (phrase("t from {amount}"), "°C"),
    "temperature_c": (phrase("temperature {amount}"), "°C"),
    "time_s": (phrase("time {amount}"), "s"),
    "tolerance_percent": (phrase("tolerance {amount}"), "%"),
    "u_0_above_v": (phrase("U0 above {amount}"), "V"),
    "u_oc_max_up_to_v": (phrase("Uoc,max up to {amount}"), "V"),
    "up_to": (phrase("up to {amount}"), ""),
}
"""Column, words and unit."""

_ABOVE: dict[str, tuple[Phrase, str]] = {
    "apparent_power_up_to_kva": (phrase("apparent power above {amount}"), "kVA"),
    "p_array_up_to_kw": (phrase("array power above {amount}"), "kW"),
}
"""The same for a row without an upper end: what it lies above."""

_COUNTS: dict[str, Phrase] = {
    "circuits_count": counted("{count} circuit", "{count} circuits", 0),
    "conductors_count": counted("{count} conductor", "{count} conductors", 0),
    "down_conductors_count": counted("{count} down conductor", "{count} down conductors", 0),
    "loaded_conductors_count": counted("{count} loaded conductor", "{count} loaded conductors", 0),
}
"""Columns that count something."""


def in_words(column: str, text: str, below: str = "") -> Sayable:
    """Return a key cell as a drawing cites it; a word says what it is by itself: `material` Cu is `Cu`.

    below: what a row without an upper end lies above, empty for other rows. Raises KeyError for a column of numbers
    that has no entry.
    """
    try:
        value = float(below or text)
    except ValueError:
        return of_cell(text)
    if not below and column in _COUNTS:
        return of_count(_COUNTS[column], int(value))
    heading, unit = (_ABOVE if below else _AMOUNTS)[column]
    return replace(heading, values=(("amount", amount(value, unit, _DIGITS)),))
