"""What a unit measures and how large it is: the arithmetic behind the quantities of a spec.

Prefixes are those of the SI brochure (9th edition, table 7); a foot is 0.3048 m and an inch 25.4 mm exactly
(international yard and pound agreement of 1959); a circular mil is the area of a circle of 0.001 inch. All of it
is decimal, so that `0.4 kV` is 400 V and not 399.99….
"""

from __future__ import annotations

import difflib
import re
from decimal import Decimal
from functools import lru_cache

__all__ = ["Measure", "convert", "kind_of", "known", "measure", "nearest_unit", "unit_pattern"]

Measure = tuple[tuple[str, ...], Decimal]
"""What a unit measures (numerator, then its denominators in order) and its size in the base unit."""

_PREFIXES = {"p": -12, "n": -9, "u": -6, "m": -3, "c": -2, "": 0, "h": 2, "k": 3, "M": 6, "G": 9}
# The prefixes that the trade writes before a unit; any other is more likely a slip than a wish.
_PREFIXED = {
    "V": "umk", "A": "pnumk", "W": "mkMG", "VA": "kMG", "var": "kMG", "Wh": "kMG", "Ah": "mk", "ohm": "umkMG",
    "F": "pnum", "H": "num", "S": "um", "Hz": "kMG", "m": "umck", "s": "num", "bit": "kMG", "N": "k", "Nm": "k",
    "Pa": "hkM", "g": "mk",
}  # fmt: skip
_PLAIN = {
    "%": ("%", "1"), "1": ("1", "1"), "C": ("C", "1"), "K": ("K", "1"), "deg": ("deg", "1"), "dB": ("dB", "1"),
    "lx": ("lx", "1"), "min": ("s", "60"), "h": ("s", "3600"), "years": ("years", "1"), "ft": ("m", "0.3048"),
    "in": ("m", "0.0254"), "mm2": ("m2", "1e-6"), "cm2": ("m2", "1e-4"), "m2": ("m2", "1"), "km2": ("m2", "1e6"),
    "A2s": ("A2s", "1"), "ohmm": ("ohmm", "1"), "Km": ("Km", "1"), "kcmil": ("m2", "5.067074790974977e-7"),
    "eV": ("eV", "1"),
}  # fmt: skip
_UNITS = {name: (base, Decimal(size)) for name, (base, size) in _PLAIN.items()} | {
    prefix + base: (base, Decimal(1).scaleb(_PREFIXES[prefix]))
    for base, prefixes in _PREFIXED.items()
    for prefix in ("", *prefixes)
}
_SIGNS = (
    ("²", "2"), ("^2", "2"), ("Ω", "ohm"), ("\u2126", "ohm"), ("℃", "C"), ("°C", "C"), ("degC", "C"), ("°", "deg"),
    ("µ", "u"), ("μ", "u"), ("·", ""), ("*", ""), (" ", ""),
)  # fmt: skip
_SPELLINGS = {
    "Wp": "W", "kWp": "kW", "MWp": "MW", "yr": "years", "year": "years", "Bd": "bit/s", "kBd": "kbit/s",
    "baud": "bit/s", "ohms": "ohm", "Ohm": "ohm", "percent": "%", "VAr": "var", "kVAr": "kvar", "MVAr": "Mvar",
    "flashes": "1", "MCM": "kcmil",
}  # fmt: skip
_KINDS = {
    "V": "voltage", "A": "current", "W": "active power", "VA": "apparent power", "var": "reactive power",
    "Wh": "energy", "Ah": "charge", "ohm": "resistance", "F": "capacitance", "H": "inductance", "S": "conductance",
    "Hz": "frequency", "m": "length", "m2": "area", "s": "time", "years": "number of years", "C": "temperature",
    "K": "temperature difference", "%": "percentage", "deg": "angle", "Nm": "torque", "N": "force", "Pa": "pressure",
    "g": "mass", "bit/s": "data rate", "%/K": "relative temperature coefficient",
    "V/K": "temperature coefficient of voltage", "A/K": "temperature coefficient of current",
    "A2s": "let-through energy", "ohmm": "resistivity", "Km/W": "thermal resistivity", "eV": "energy of a band gap",
}  # fmt: skip


def _parts(unit: str) -> list[str]:
    """Return the numerator and the denominators of a unit in their plain spelling."""
    text = re.sub(r"/\(([^()]*)\)", lambda found: "/" + re.sub("[·* ]+", "/", found[1]), unit.strip())
    for sign, plain in _SIGNS:
        text = text.replace(sign, plain)
    text = "1" + text if text.startswith("/") else text
    first, *rest = "/".join(_SPELLINGS.get(part, part) for part in text.split("/")).split("/")
    # A difference of temperature is the same in degrees Celsius and in kelvins.
    return [first, *("K" if part == "C" else part for part in rest)]


@lru_cache(maxsize=4096)
def measure(unit: str) -> Measure | None:
    """Return what a unit measures and its size, or None for a unit that is not known."""
    first, *rest = _parts(unit)
    if any(part not in _UNITS for part in (first, *rest)):
        return None
    base, size = _UNITS[first]
    for part in rest:
        size /= _UNITS[part][1]
    return (base, *sorted(_UNITS[part][0] for part in rest)), size


def known(unit: str) -> Measure:
    """Return what a unit measures and its size. Raises ValueError for a unit that is not known."""
    found = measure(unit)
    if found is None:
        raise ValueError(f"unit {unit!r} is not known")
    return found


def convert(value: Decimal, unit: str, to: str) -> float:
    """Return a value of `unit` in the unit `to`. Raises ValueError where they do not measure the same thing."""
    (what, size), (wanted, step) = known(unit), known(to)
    if what != wanted:
        raise ValueError(f"{unit} cannot be turned into {to}")
    return float(value * size / step)


def kind_of(unit: str) -> str:
    """Return what a known unit measures in words (`length`), or nothing where there is no short word for it."""
    return _KINDS.get("/".join(known(unit)[0]), "")


def nearest_unit(unit: str) -> str:
    """Return the unit that an unknown one was probably meant to be, or nothing."""
    same = [name for name in _UNITS if name.casefold() == unit.casefold()]
    close = same or difflib.get_close_matches(unit, list(_UNITS), n=1, cutoff=0.75)
    return close[0] if close else ""


_SIGN_PATTERNS = (
    ("ohm", "(ohm|[\u03a9\u2126])"), ("deg", "(deg|\u00b0)"), ("m2", "m(2|\u00b2|\\^2)"),
    ("A2s", "A(2|\u00b2|\\^2)[ \u00b7*]?s"), ("Nm", "N[ \u00b7*]?m"),
    ("Wh", "W[ \u00b7*]?h"), ("Ah", "A[ \u00b7*]?h"), ("VA", "V[ \u00b7*]?A"),
)  # fmt: skip


def unit_pattern(unit: str) -> str:
    """Return a regular expression (ECMA 262) of the usual spellings of all units that measure what a unit does.

    A unit with a denominator has so many that any text is let through.
    """
    what = known(unit)[0]
    if len(what) > 1 or what[0] not in {base for base, _ in _UNITS.values()}:
        return ".+"
    names = [name for name, (base, _) in _UNITS.items() if (base,) == what]
    names += [name for name, plain in _SPELLINGS.items() if plain in names]
    return "|".join(sorted({_with_signs(name) for name in names}))


def _with_signs(name: str) -> str:
    """Return the pattern of one name of a unit."""
    if name == "C":
        return "(\u00b0|deg)?C|\u2103"
    pattern = re.escape(name).replace("/", "[/]")
    for plain, signs in _SIGN_PATTERNS:
        if name.endswith(plain):
            pattern = re.escape(name.removesuffix(plain)) + signs
            break
    return re.sub("^u", "[u\u00b5\u03bc]", pattern)
