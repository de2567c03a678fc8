"""The options that `check` and `draw` share, and what a run was asked for by them."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from sld.cli import given
from sld.cli.bounds import Bounds
from sld.frozen import dataclass

__all__ = [
    "MEGABYTES",
    "SECONDS",
    "AllowOutside",
    "Cluster",
    "Index",
    "Jobs",
    "Megabytes",
    "Run",
    "Seconds",
    "Specs",
    "Summary",
]

SECONDS, MEGABYTES = 600.0, 4000
"""The bounds of a spec where none are given: some times what the largest one took that was ever measured."""

Specs = Annotated[list[Path], typer.Argument(metavar="SPEC...", help=given.HELP, show_default=False)]

AllowOutside = Annotated[bool, typer.Option(help="Allow types files outside the spec's folder.")]

Jobs = Annotated[
    int | None,
    typer.Option(min=1, help="Processes that share several specs; left out, one for each core.", show_default=False),
]

Cluster = Annotated[
    str | None,
    typer.Option(
        metavar="ADDRESS",
        help="Scheduler of a Dask cluster whose workers share the specs, e.g. tcp://10.0.0.5:8786.",
        show_default=False,
    ),
]

Seconds = Annotated[float, typer.Option(min=0, help="Longest time for one spec, which is then stopped; 0: any.")]

Megabytes = Annotated[
    int, typer.Option(min=0, help="Most memory (address space) for one spec, which is then stopped; 0: any.")
]

Summary = Annotated[Path | None, typer.Option(help="File for a summary: a line of JSON a spec.", show_default=False)]

Index = Annotated[
    Path | None,
    typer.Option(
        help="File for an index: an HTML page with a picture, the state and the files of each spec.",
        show_default=False,
    ),
]


@dataclass(frozen=True, slots=True)
class Run:
    """How the specs of a run are dealt with. jobs: processes, None for one a core. summary: for a line a spec.

    cluster: the address of one that deals with them instead. out: the folder that is written to. index: for the page.
    """

    jobs: int | None
    bounds: Bounds
    summary: Path | None = None
    cluster: str | None = None
    out: Path | None = None
    index: Path | None = None
