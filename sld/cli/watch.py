"""`sld watch`: a spec drawn again at each save, in a browser on this machine."""

from __future__ import annotations

import threading
import time
from pathlib import Path
from typing import Annotated, Literal

import typer

from sld.cli.options import AllowOutside
from sld.cli.outcome import UNUSABLE
from sld.cli.terminal import finish, line, say

__all__ = ["watch"]

_EVERY_S = 0.3
"""How often the files are looked at."""

_SPEC = "A spec (YAML or JSON); its types files and logo are watched too."


def watch(
    spec: Annotated[Path, typer.Argument(help=_SPEC, show_default=False)],
    paper: Annotated[
        Literal["A4", "A3", "A2", "A1", "A0"] | None, typer.Option(help="Sheet size, instead of the spec's.")
    ] = None,
    for_print: Annotated[
        Literal["A4", "A3", "A2", "A1", "A0"] | None,
        typer.Option(help="Size it will be printed on: laid out for that, on more sheets; letters stay legible."),
    ] = None,
    reader: Annotated[
        Literal["full", "operator", "crew"] | None, typer.Option(help="For whom it is drawn, instead of the spec's.")
    ] = None,
    allow_outside: AllowOutside = False,
    port: Annotated[int, typer.Option(min=0, max=65535, help="Port on this machine; 0: any that is free.")] = 0,
    browser: Annotated[bool, typer.Option(help="Open the page in the browser.")] = False,
) -> None:
    """Show a spec in a browser on this machine, drawn again at each save, findings beside the drawing.

    Nothing is written, and nobody else on the network can see it. Ends with Ctrl+C.

    Example: sld watch specs/village-hall.yaml --browser
    """
    from sld.cli.watching.latest import Latest, Options
    from sld.cli.watching.server import Server

    if paper and for_print:
        say("--paper and --for-print are two sizes of the same sheets: give one of them")
        raise typer.Exit(UNUSABLE)
    if not spec.is_file():
        say(f"{spec}: there is no such file")
        raise typer.Exit(UNUSABLE)
    latest = Latest(spec, Options(paper, reader, allow_outside, for_print), say)
    latest.look()
    try:
        server = Server(latest, port)
    except OSError as problem:
        say(f"port {port}: {problem.strerror or problem}; leave --port out for any that is free")
        raise typer.Exit(UNUSABLE) from None
    threading.Thread(target=server.serve_forever, daemon=True).start()
    line(server.address)
    finish()  # who reads it from a pipe waits for it
    if browser:
        typer.launch(server.address)
    try:
        while True:
            time.sleep(_EVERY_S)
            latest.look()
    except KeyboardInterrupt:
        server.shutdown()
