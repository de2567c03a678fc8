"""`sld new`: the first text of a spec, from a few answers."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Annotated, NoReturn, TypeVar

import typer

from sld.cli.outcome import UNUSABLE
from sld.cli.terminal import can_ask, line, say

__all__ = ["new"]

_Answer = TypeVar("_Answer")


def new(
    file: Annotated[Path, typer.Argument(help="The spec to write; a file that is there stays as it is.")],
    phases: Annotated[int | None, typer.Option(help="1 or 3.", show_default=False)] = None,
    earthing: Annotated[str | None, typer.Option(help="Earthing system, such as TN-S.", show_default=False)] = None,
    country: Annotated[str | None, typer.Option(help="Two letters, ISO 3166-1.", show_default=False)] = None,
    power: Annotated[str | None, typer.Option(help="Of the inverter: 10 kW.", show_default=False)] = None,
    strings: Annotated[
        str | None, typer.Option(help="Modules in series of each string: 12,12.", show_default=False)
    ] = None,
    module: Annotated[str | None, typer.Option(help="Name of the module type.", show_default=False)] = None,
    inverter: Annotated[str | None, typer.Option(help="Name of the inverter type.", show_default=False)] = None,
    meter: Annotated[
        bool | None, typer.Option("--meter/--no-meter", help="An energy meter on its data bus.", show_default=False)
    ] = None,
) -> None:
    """Write a first spec with comments on what is to be measured and copied from data sheets.

    On a terminal it asks what no option says; elsewhere it takes the usual answer.

    Example: sld new house.yaml --phases 3 --earthing TN-C-S --power "10 kW"
    """
    from sld.spec.language.draft import Answers, draft

    usual = Answers()
    asked = Answers(
        phases=_answer(phases, "Phases of the supply, 1 or 3", usual.phases, _phases),
        earthing_system=_answer(earthing, "Earthing system", usual.earthing_system, _earthing),
        country=_answer(country, "Country, two letters, or - for none", "-", _country),
        power_w=_answer(power, "Power of the inverter", "10 kW", _power),
        strings=_answer(strings, "Modules in series of each string, or - for as many as fit the power", "-", _strings),
        module=_answer(module, "Name of the module type", usual.module, _name),
        inverter=_answer(inverter, "Name of the inverter type", usual.inverter, _name),
        meter=_answer(meter, "An energy meter on the data bus of the inverter, yes or no", "no", _yes),
    )
    try:
        with file.open("x", encoding="utf-8") as stream:
            stream.write(draft(asked))
    except FileExistsError:
        _refuse(f"{file} is there already and stays as it is: name another file")
    except OSError as problem:
        _refuse(f"cannot write {file}: {problem.strerror or problem}")
    line(f"{file}: written; next: sld check {file}")


def _answer(given: object, question: str, usual: object, read: Callable[[str], _Answer]) -> _Answer:
    """Return the answer to a question: what an option says, else what is typed on a terminal, else the usual one."""
    if given is not None:
        try:
            return read(str(given))
        except ValueError as wrong:
            _refuse(str(wrong))
    while can_ask():
        try:
            return read(str(typer.prompt(question, default=str(usual))))
        except ValueError as wrong:
            say(str(wrong))
    return read(str(usual))


def _refuse(why: str) -> NoReturn:
    say(why)
    raise typer.Exit(UNUSABLE)


def _phases(text: str) -> int:
    if text not in ("1", "3"):
        raise ValueError(f"phases are 1 or 3, not {text}")
    return int(text)


def _earthing(text: str) -> str:
    from sld.spec.language.draft import EARTHING_SYSTEMS

    found = next((each for each in EARTHING_SYSTEMS if each.casefold() == text.strip().casefold()), None)
    if found is None:
        raise ValueError(f"there is no earthing system {text}: one of {', '.join(EARTHING_SYSTEMS)}")
    return found


def _country(text: str) -> str | None:
    from sld.spec.countries import CODES

    code = text.strip().upper()
    if code in ("", "-"):
        return None
    if code not in CODES:
        raise ValueError(f"there is no country {text} in ISO 3166-1: write its two letters, or - for none")
    return code


def _power(text: str) -> float:
    from sld.spec.language.draft import POWER

    return POWER.read(text)


def _strings(text: str) -> tuple[int, ...]:
    if text.strip() in ("", "-"):
        return ()
    numbers = text.replace(" ", "").split(",")
    if not all(each.isascii() and each.isdigit() and 1 <= int(each) <= 100 for each in numbers) or len(numbers) > 40:
        raise ValueError(f"strings are numbers of modules such as 12,12, not {text}")
    return tuple(map(int, numbers))


def _name(text: str) -> str:
    if not text.strip() or len(text) > 100 or not text.isprintable():
        raise ValueError("a name of a type is one line of up to 100 characters")
    return text.strip()


def _yes(text: str) -> bool:
    word = text.strip().casefold()
    if word not in ("yes", "y", "true", "no", "n", "false"):
        raise ValueError(f"answer yes or no, not {text}")
    return word in ("yes", "y", "true")
