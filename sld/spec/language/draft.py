"""The first text of a spec: from a few answers and the blocks of the language, so that no key of it can be out of date.

What nobody said stands as an example of its key where the key is needed, and without a value in a comment where it is
not; a comment beside each says where the true value comes from.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from typing import Any

from sld.frozen import dataclass
from sld.spec.blocks.block import Block
from sld.spec.blocks.inverter import InverterType, MppInput
from sld.spec.blocks.module import ModuleType
from sld.spec.blocks.project import Project
from sld.spec.blocks.site import Site
from sld.spec.blocks.supply import Supply
from sld.spec.fields import example_value, words_of
from sld.spec.language.blocks import fields_by_key
from sld.spec.language.forms import written
from sld.spec.units import Unit

__all__ = ["EARTHING_SYSTEMS", "POWER", "Answers", "draft"]

_DATA_SHEET = "example: copy it from the data sheet"
_OF_THE_SITE = "example: replace it by that of the site"
_MEASURED = "to be measured or asked for"
EARTHING_SYSTEMS: tuple[str, ...] = words_of(fields_by_key(Supply)["earthing_system"])
POWER = Unit("W", minimum=100, maximum=50_000)
"""Powers of a draft, which has one inverter behind a miniature circuit-breaker."""

_MOST_IN_SERIES = 16
"""Modules in series of the examples below which a string stays in the range of the inverter of the examples at any
usual temperature."""

_PROFILES = {"GB": "BS 7671", "AU": "AS/NZS 5033", "NZ": "AS/NZS 5033", "US": "NEC 690"}
"""The rule profile of a country that has one of its own; of others the cautious one."""


@dataclass(frozen=True, slots=True)
class Answers:
    """What a draft is made from. strings: modules in series, one entry a string. power_w: of the inverter. [W]

    meter: there is an energy meter on the inverter's data bus. strings: left empty, as many as the power asks for.
    """

    phases: int = 3
    earthing_system: str = "TN-S"
    country: str | None = None
    power_w: float = 10_000
    strings: tuple[int, ...] = ()
    module: str = "module of the data sheet"
    inverter: str = "inverter of the data sheet"
    meter: bool = False


def draft(answers: Answers) -> str:
    """Return the text of a spec that can be checked and drawn as it stands."""
    strings = answers.strings or _strings(answers.power_w)
    return "\n".join(
        [
            "# A draft: every value with a comment behind it is an example or missing, and has to be replaced.",
            "# `sld check` says what is still open; `sld keys BLOCK` lists what else can be said in a block.",
            "project:",
            *_block(Project, {"title": "PV system", "document_status": "draft with example values"}, "", 1),
            *([f"profile: {_PROFILES[answers.country]}"] if answers.country in _PROFILES else []),
            "site:",
            *_block(Site, {}, _OF_THE_SITE, 1),
            "supply:",
            *_supply(answers),
            "types:",
            "  modules:",
            f"    {written(answers.module)}:",
            *_block(ModuleType, {}, _DATA_SHEET, 3, missing=("voltage_coefficient",)),
            "  inverters:",
            f"    {written(answers.inverter)}:",
            *_inverter_type(answers, len(strings)),
            *_board(answers),
            "inverters:",
            "  roof:",
            f"    type: {written(answers.inverter)}",
            *_circuit(answers),
            "    inputs:",
            *(f"      - strings: [{{module: {written(answers.module)}, modules_in_series: {n}}}]" for n in strings),
            *_earthing(answers),
            *_data(answers),
            "",
        ]
    )


def _strings(power_w: float) -> tuple[int, ...]:
    """Return the modules of each string for an array of about the power of the inverter, of modules of the example."""
    module_w = float(example_value(fields_by_key(ModuleType)["rated_power"]).split()[0])
    modules = max(8, math.ceil(power_w / module_w))
    count = math.ceil(modules / _MOST_IN_SERIES)
    return (math.ceil(modules / count),) * count


def _block(
    block: type[Block], given: Mapping[str, Any], remark: str, depth: int, missing: Iterable[str] = ()
) -> list[str]:
    """Return the lines of a block: what is given, an example for what is needed besides, what is missing as comments.

    remark: where the true value of an example comes from. missing: further keys. Raises KeyError for an unknown key.
    """
    indent = "  " * depth
    fields = fields_by_key(block)
    lines = []
    for key in (*given, *(key for key, field in fields.items() if field.is_required() and key not in given)):
        if key in given:
            lines.append(f"{indent}{key}: {_value(given[key])}")
        elif example := example_value(fields[key]):
            lines.append(f"{indent}{key}: {example}  # {remark}")
    for key in missing:
        lines.append(f"{indent}# {key}:  # {_MEASURED}: {_first_sentence(fields[key].description or key)}")
    return lines


def _value(given: Any) -> str:
    return given if isinstance(given, str) and given.startswith(("[", "{")) else written(given)


def _first_sentence(text: str) -> str:
    return text.split(". ")[0].rstrip(".")


def _supply(answers: Answers) -> list[str]:
    given: dict[str, Any] = {"phases": answers.phases}
    if answers.country == "US" and answers.phases == 1:
        given["split_phase"] = True
    given["earthing_system"] = answers.earthing_system
    if answers.country:
        given["country"] = answers.country
    asked = ("supply_point", "operator", "service_fuse", "prospective_fault_current", "loop_impedance")
    return _block(Supply, given, _OF_THE_SITE, 1, missing=asked)


def _inverter_type(answers: Answers, count: int) -> list[str]:
    inner = [line.strip() for line in _block(MppInput, {"count": count}, _DATA_SHEET, 0)]
    values = ", ".join(line.split("  #")[0] for line in inner)
    given = {"rated_power": f"{answers.power_w:g} W", "phases": answers.phases}
    lines = _block(InverterType, given, _DATA_SHEET, 3)
    return [*lines, f"      inputs: [{{{values}}}]  # {_DATA_SHEET}"]


def _board(answers: Answers) -> list[str]:
    """Return the main board with a surge protective device, which the standards ask for in most buildings."""
    counts = ["      - {kind: meter, id: energy_meter, purpose: feed_in_limit}"] if answers.meter else []
    return [
        "boards:",
        "  main:",
        "    circuit:",
        "      - {kind: meter, purpose: supply}",
        "      - {kind: main_switch}",
        *counts,
        "      - {kind: surge_protection}  # asked for unless the owner declines it: see `sld keys site`",
    ]


def _circuit(answers: Answers) -> list[str]:
    """Return the circuit of the inverter; in a TT system with an RCD, without which it cannot disconnect."""
    residual = ["      - {kind: rcd}  # TT: what disconnects an earth fault"] if answers.earthing_system == "TT" else []
    cable = ["      # - {kind: cable, length: }  # to be measured: the way from the board to the inverter"]
    return ["    circuit:", "      - {kind: breaker}", *residual, *cable, "      - {kind: isolator}"]


def _earthing(answers: Answers) -> list[str]:
    if answers.earthing_system not in ("TT", "IT"):
        return ["# earthing:  # to be looked at: `sld keys earthing`"]
    return ["earthing:", "  electrode: {kind: rod}  # to be looked at; its resistance is to be measured"]


def _data(answers: Answers) -> list[str]:
    """Return the bus from the meter to the inverter."""
    if not answers.meter:
        return []
    devices = "[{device: energy_meter}, {device: roof}]"
    return [
        "data:",
        "  chains:",
        "    bus:",
        f"      devices: {devices}  # to be looked at: addresses, lengths, terminating resistors",
    ]
