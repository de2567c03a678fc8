"""The worked examples of `published.yaml`: reads the rows and works them with the functions of `sld.ratings`."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from importlib import import_module
from pathlib import Path
from typing import Any

import yaml

from sld.quantity import Rating
from sld.ratings.ac_cable import declared_factor
from sld.ratings.cable_section import CableDesign
from sld.ratings.impedance import Impedance, in_series
from sld.ratings.symbol import Symbol
from sld.tables.profiles import profile

TABLE = Path(__file__).with_name("published.yaml")
FOOT_M = 0.3048
INPUT_UNITS = {"ft": FOOT_M, "Ω/kft": 1 / FOOT_M, "mΩ": 1e-3, "Ω": 1.0}
"""What a printed unit is in the unit of our parameter (m, ohm/km, ohm)."""
RESULT_UNITS = {("m", "ft"): 1 / FOOT_M, ("Ω", "mΩ"): 1e3}
ARITHMETIC = re.compile(r"(?:[-+*/().\d\s]|sqrt|log|floor)+")
KEYS = {"from", "shows", "call", "with", "take", "printed", "within", "right", "remark"}


@dataclass(frozen=True)
class Example:
    """One row. within and printed_value in the printed unit; right: the derivation where the print is wrong."""

    title: str
    url: str
    shows: str
    function: str
    inputs: Mapping[str, Any]
    take: str
    printed: str
    within: float
    right: str
    remark: str

    @property
    def printed_value(self) -> float:
        return _number(self.printed)

    @property
    def unit(self) -> str:
        return self.printed.partition(" ")[2]

    @property
    def right_value(self) -> float:
        return _arithmetic(self.right)

    def ours(self) -> float:
        """Return what our function gives, in the printed unit."""
        result = _called(self.function, self.inputs)
        return _in_unit(getattr(result, self.take) if self.take else result, self.unit)


def _number(printed: str) -> float:
    return float(printed == "yes") if printed in ("yes", "no") else float(printed.partition(" ")[0])


def _half_of_the_last_digit(printed: str) -> float:
    if printed in ("yes", "no"):
        return 0.0
    exponent = Decimal(printed.partition(" ")[0]).as_tuple().exponent
    assert isinstance(exponent, int)
    return 0.5000001 * 10.0**exponent


def _arithmetic(text: str) -> float:
    assert ARITHMETIC.fullmatch(text), text
    return float(eval(text, {"__builtins__": {}}, {"sqrt": math.sqrt, "log": math.log, "floor": math.floor}))


def _called(function: str, inputs: Mapping[str, Any]) -> Any:
    module, _, name = function.rpartition(".")
    return getattr(import_module(f"sld.ratings.{module}"), name)(
        **{key: _read(value, key) for key, value in inputs.items()}
    )


def _read(value: Any, key: str) -> Any:
    """Return an input as our function takes it: a number of its unit, a rating, an impedance, a profile."""
    if isinstance(value, list):
        return [_read(each, key) for each in value]
    if isinstance(value, dict):
        return _read_block(value, key)
    if not isinstance(value, str) or key in ("material", "insulation", "method"):
        return value
    if key == "profile":
        return profile(value)
    number, _, unit = value.partition(" ")
    if unit in INPUT_UNITS:
        return float(number) * INPUT_UNITS[unit]
    return _arithmetic(value) if ARITHMETIC.fullmatch(value) else value


def _read_block(block: dict[str, Any], key: str) -> Any:
    if "call" in block:
        result = _called(block["call"], block["with"])
        as_number = (
            isinstance(result, Rating) and re.search(r"_(?:a|a2s|c|v|percent_per_k|ohm)$", key) and key != "tabulated_a"
        )
        return result.value if as_number else result
    if "sum" in block:
        return in_series(_read(part, key) for part in block["sum"])
    if "r" in block:
        return Impedance(_read(block["r"], "r_ohm"), _read(block["x"], "x_ohm"))
    if "repeat" in block:
        return [block["repeat"][0]] * block["repeat"][1]
    if "declared" in block:
        values = block["declared"]
        ratings = [declared_factor(f"C{factor}", factor, "printed") for factor in _listed(values)]
        return ratings if isinstance(values, list) else ratings[0]
    assert key == "design", block
    return CableDesign(**block)


def _listed(values: Any) -> list[float]:
    return values if isinstance(values, list) else [values]


def _in_unit(result: Any, unit: str) -> float:
    """Return a result in the printed unit. Fails where our unit is another that cannot be turned into it."""
    assert result is not None
    if isinstance(result, bool):
        return float(result)
    if isinstance(result, Impedance):
        result = Rating(Symbol.ZK, result.magnitude_ohm, "Ω", "", (), "")
    if result.unit == unit:
        return float(result.value)
    return float(result.value) * RESULT_UNITS[result.unit, unit]


def examples() -> list[Example]:
    """Return all rows, in the order of the table."""
    data = yaml.safe_load(TABLE.read_text(encoding="utf-8"))
    found = []
    for row in data["examples"]:
        assert set(row) <= KEYS, row
        source = data["sources"][row["from"]]
        printed = row["printed"]
        within = float(row.get("within", _half_of_the_last_digit(printed)))
        found.append(
            Example(
                source["title"], source["url"], row["shows"], row["call"], row["with"], row.get("take", ""),
                printed, within, str(row.get("right", "")), row.get("remark", ""),
            )
        )  # fmt: skip
    assert {row["from"] for row in data["examples"]} == set(data["sources"]), "a source without a row"
    return found
