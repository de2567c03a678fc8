"""Words into lines: printable, wrapped by the font's true widths, shortened where there is no room."""

from __future__ import annotations

import re
from functools import lru_cache
from itertools import accumulate

from sld.symbols.typeface import SLACK_MM, printable, text_units, text_width_mm, units_mm
from sld.words.phrase import NO_BREAK, SOFT_HYPHEN

__all__ = ["ELLIPSIS", "fitted", "lengths_mm", "shortened", "words_of", "wrap"]

ELLIPSIS = "…"

_BLANKS = f" {NO_BREAK}"

_NUMBER = re.compile(r"[+\-−≤≥<>(]*\d[\d.,]*")
_SIGN = re.compile(r"[≤≥<>~]")
_SYMBOL = re.compile(r"(?:[UIRZ][A-Za-z]{1,5}|ip|uk|cos|φ)(?:,\w+)?")
"""A letter symbol, which stays with the value behind it."""
_UNITS = frozenset((
    "A", "mA", "kA", "A²s", "V", "mV", "kV", "W", "kW", "MW", "Wp", "kWp", "VA", "kVA", "kvar", "kWh", "Hz", "Ω", "mΩ",
    "kΩ", "MΩ", "mm", "mm²", "AWG", "kcmil", "cm", "m", "m²", "km", "ms", "s", "min", "h", "K", "°C", "%", "pole",
    "poles", "AC", "DC",
))  # fmt: skip

_MEASURED = re.compile(rf"\d[{_BLANKS}](?:k?V|kA|A)$")
"""A value that the kind of current may follow."""

_PUBLISHERS = frozenset(("IEC", "EN", "ISO", "HD", "VDE", "DIN", "BS", "NFPA", "UL", "CEI"))


def _fits(text: str, width_mm: float, height_mm: float) -> bool:
    return text_width_mm(text, height_mm) + SLACK_MM <= width_mm


@lru_cache(maxsize=4096)
def words_of(paragraph: str) -> tuple[str, ...]:
    """Return the words of a paragraph: what no line parts. A value is kept with its symbol, sign and unit, a standard's
    number with its publisher."""
    words: list[str] = []
    for word in printable(paragraph).split(" "):
        if word and words and _belong_together(words[-1], word):
            words[-1] += " " + word
        elif word:
            words.append(word)
    return tuple(words)


def _belong_together(before: str, word: str) -> bool:
    """Return whether a word stays on the line of what is before it."""
    if word.rstrip(".,;:)*") in _UNITS:
        return bool(_NUMBER.fullmatch(re.split(f"[{_BLANKS}]", before)[-1])) or bool(_MEASURED.search(before))
    if word[0].isdigit():
        return before in _PUBLISHERS or bool(_SIGN.fullmatch(before[-1]) or _SYMBOL.fullmatch(before))
    return (word[0] in "≤≥" and bool(_SYMBOL.fullmatch(before.split(" ")[-1]))) or (before, word[0]) == ("cos", "φ")


def _leading_count(word: str, width_mm: float, height_mm: float) -> int:
    """Return how many leading characters fit, at least one."""
    room, used = width_mm - SLACK_MM, 0.0
    for count, char in enumerate(word):
        used += text_width_mm(char, height_mm)
        if used > room:
            return max(count, 1)
    return len(word)


def _broken(word: str, width_mm: float, height_mm: float) -> list[str]:
    """Return a word cut into parts that fit; after a hyphen, slash or the like where one is in reach."""
    parts: list[str] = []
    while word:
        count = _leading_count(word, width_mm, height_mm)
        if count < len(word):
            count = next((n for n in range(count, count // 4, -1) if word[n - 1] in "-/_.,;:+" + _BLANKS), count)
        parts.append(word[:count].rstrip(_BLANKS))
        word = word[count:].lstrip(_BLANKS)
    return parts


def divided(text: str, width_mm: float, height_mm: float = 2.5) -> str:
    """Return a text of which the words that are wider than a line are divided at their soft hyphens, as few as can be.

    The other soft hyphens go. Parts of a word are words of their own that never fit on one line together; a word with a
    part that is itself too wide stays whole.
    """
    if SOFT_HYPHEN not in text:
        return text
    return " ".join(part for word in text.split(" ") for part in _parts(word, width_mm, height_mm))


def _parts(word: str, width_mm: float, height_mm: float) -> list[str]:
    """Return the parts of a word, with a hyphen at the end of all but the last."""
    *joints, last = word.split(SOFT_HYPHEN)
    whole, least = word.replace(SOFT_HYPHEN, ""), [*(f"{joint}-" for joint in joints), last]
    if _fits(whole, width_mm, height_mm) or not all(_fits(part, width_mm, height_mm) for part in least):
        return [whole]
    parts: list[str] = []
    for part in least:
        if parts and _fits(parts[-1][:-1] + part, width_mm, height_mm):
            parts[-1] = parts[-1][:-1] + part
        else:
            parts.append(part)
    return parts


def wrap(text: str, width_mm: float, height_mm: float = 2.5) -> tuple[str, ...]:
    """Return the lines of a text, none wider than the width (less the slack a browser needs).

    A word is cut only where it alone is wider than the column; one character is the least a line holds. A line feed in
    the text begins a new line. Empty text gives one empty line. A no-break space holds its words on one line, where it
    is a plain one.
    """
    if "\n" not in text:
        return _wrapped(text, width_mm, height_mm)
    return tuple(line for paragraph in text.split("\n") for line in _wrapped(paragraph, width_mm, height_mm))


@lru_cache(maxsize=4096)
def _measured(paragraph: str) -> tuple[tuple[str, ...], tuple[int, ...], int, tuple[str, ...]]:
    """Return the words of a paragraph, their widths, that of all on one line in units of the font, and that line."""
    words = words_of(paragraph)
    units = tuple(map(text_units, words))
    return (
        words,
        units,
        sum(units) + text_units(" ") * max(0, len(words) - 1),
        (" ".join(words).replace(NO_BREAK, " "),),
    )


@lru_cache(maxsize=4096)
def lengths_mm(paragraph: str) -> tuple[float, ...]:
    """Return where the words of a paragraph on one line begin, in letters of 2.5 mm, and where one more would begin."""
    _, widths, _, _ = _measured(paragraph)
    blank = text_units(" ")
    ends = accumulate((width + blank for width in widths), initial=0)
    return tuple(units_mm(units, 2.5) for units in ends)


def _wrapped(paragraph: str, width_mm: float, height_mm: float) -> tuple[str, ...]:
    """Return the lines of a paragraph."""
    words, widths, all_units, whole = _measured(paragraph)
    if not words or units_mm(all_units, height_mm) + SLACK_MM <= width_mm:  # nearly all
        return whole
    lines: list[str] = []
    line: list[str] = []
    blank = text_units(" ")
    units = -blank
    for word, word_units in zip(words, widths, strict=True):
        units += blank + word_units
        if units_mm(units, height_mm) + SLACK_MM <= width_mm:
            line.append(word)
            continue
        if line:
            lines.append(" ".join(line))
        *full, last = [word] if _fits(word, width_mm, height_mm) else _broken(word, width_mm, height_mm)
        lines += full
        line, units = [last], text_units(last)
    lines.append(" ".join(line))
    return tuple(each.replace(NO_BREAK, " ") for each in lines)


def shortened(text: str, width_mm: float, height_mm: float = 2.5) -> str:
    """Return the text on one line, cut and marked with an ellipsis where it is wider than the width."""
    line = " ".join(words_of(text)).replace(NO_BREAK, " ")
    if _fits(line, width_mm, height_mm):
        return line
    while line and not _fits(line + ELLIPSIS, width_mm, height_mm):
        line = line[:-1]
    return line.rstrip(" ") + ELLIPSIS


def fitted(text: str, width_mm: float, height_mm: float, lines_count: int) -> tuple[str, ...]:
    """Return at most so many lines; where more would be needed the last one is cut and marked with an ellipsis."""
    lines = wrap(text, width_mm, height_mm)
    if len(lines) <= lines_count:
        return lines
    last = lines[lines_count - 1]
    while last and not _fits(last + ELLIPSIS, width_mm, height_mm):
        last = last[:-1]
    return (*lines[: lines_count - 1], last.rstrip(" ") + ELLIPSIS)
