"""The open tables of modules and inverters that the library pvlib carries, searched by words of the name.

Each row is cited with its table and line. What a table has not is not put in: inverters there have no phases and no
limit of the short-circuit current.
"""

from __future__ import annotations

import csv
from collections.abc import Iterator, Mapping, Sequence
from importlib.metadata import version
from importlib.util import find_spec
from pathlib import Path
from typing import Any

from sld.datasheets.record import INPUTS, Kind, Record

__all__ = ["MissingTables", "found"]

_PATTERNS: Mapping[Kind, str] = {
    "modules": "sam-library-cec-modules-*.csv",
    "inverters": "sam-library-cec-inverters-*.csv",
}
_HEAD_LINES = 3
_THIN = ("thin", "cdte", "cigs", "cis", "amorphous", "a-si")


class MissingTables(Exception):  # noqa: N818 - nobody's fault
    """The library with the tables is not installed, or has them no more."""


def found(words: Sequence[str], kinds: Sequence[Kind]) -> Iterator[Record]:
    """Yield the rows whose name has all words, in the order of the tables. Raises MissingTables, OSError."""
    asked = [each.casefold() for each in words]
    for kind in kinds:
        path = _table(kind)
        with path.open(encoding="utf-8", newline="") as stream:
            reader = csv.reader(stream)
            headings = next(reader)
            for row in reader:
                if reader.line_num <= _HEAD_LINES or not all(each in row[0].casefold() for each in asked):
                    continue
                cells = dict(zip(headings, row, strict=False))
                values = _module(cells) if kind == "modules" else _inverter(cells)
                source = f"pvlib {version('pvlib')}: {path.name}, line {reader.line_num}"
                yield Record(kind, " ".join(row[0].split()), values, source)


def _table(kind: Kind) -> Path:
    library = find_spec("pvlib")
    if library is None or library.origin is None:
        raise MissingTables(
            "the tables come with the library pvlib: pip install '.[tables]' in the clone, or pip install pvlib"
        )
    tables = sorted((Path(library.origin).parent / "data").glob(_PATTERNS[kind]))
    if not tables:
        raise MissingTables(f"pvlib {version('pvlib')} has no table {_PATTERNS[kind]}")
    return tables[-1]


def _quantities(cells: Mapping[str, str], columns: Mapping[str, tuple[str, str]]) -> dict[str, Any]:
    """Return the cells that hold something under the keys of the spec. columns: key -> column and unit."""
    told = {key: (cells.get(column, ""), unit) for key, (column, unit) in columns.items()}
    return {key: f"{_number(cell)} {unit}" for key, (cell, unit) in told.items() if _number(cell)}


def _number(cell: str) -> str:
    try:
        return f"{float(cell):.7g}"
    except ValueError:
        return ""


def _module(cells: Mapping[str, str]) -> dict[str, Any]:
    values = _quantities(
        cells,
        {
            "rated_power": ("STC", "W"),
            "open_circuit_voltage": ("V_oc_ref", "V"),
            "short_circuit_current": ("I_sc_ref", "A"),
            "mpp_voltage": ("V_mp_ref", "V"),
            "mpp_current": ("I_mp_ref", "A"),
            "voltage_coefficient": ("beta_oc", "V/K"),
            "current_coefficient": ("alpha_sc", "A/K"),
            "power_coefficient": ("gamma_r", "%/K"),
            "nominal_cell_temperature": ("T_NOCT", "°C"),
        },
    )
    if any(each in cells.get("Technology", "").casefold() for each in _THIN):
        values["technology"] = "thin_film"
    diode = _quantities(
        cells,
        {
            "photocurrent": ("I_L_ref", "A"),
            "saturation_current": ("I_o_ref", "A"),
            "series_resistance": ("R_s", "ohm"),
            "shunt_resistance": ("R_sh_ref", "ohm"),
            "modified_ideality": ("a_ref", "V"),
        },
    )
    return values | ({"single_diode": diode} if diode else {})


def _inverter(cells: Mapping[str, str]) -> dict[str, Any]:
    values = _quantities(
        cells,
        {
            "rated_power": ("Paco", "W"),
            "rated_voltage": ("Vac", "V"),
            "dc_voltage_max": ("Vdcmax", "V"),
            "mpp_voltage_min": ("Mppt_low", "V"),
            "mpp_voltage_max": ("Mppt_high", "V"),
            "dc_power_max": ("Pdco", "W"),
        },
    )
    inputs = _quantities(cells, {"current_max": ("Idcmax", "A")})
    return values | ({INPUTS: [inputs]} if inputs else {})
