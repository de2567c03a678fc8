"""`python -m sld.gallery [FOLDER]`: make the drawings and pages of `gallery/` anew."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from sld.gallery.pages import ROOT, pages, strangers
from sld.render import MissingCairo
from sld.spec import Unusable
from sld.spec.quote import quote

__all__ = ["main"]


def main(arguments: list[str] | None = None) -> int:
    """Write every page and return the exit code: 0, or 2 where a spec cannot be used or cairo is missing."""
    parser = argparse.ArgumentParser(prog="python -m sld.gallery", description=__doc__)
    parser.add_argument("folder", nargs="?", type=Path, default=ROOT / "gallery", help="default: %(default)s")
    parser.add_argument("--specs", type=Path, default=ROOT / "specs", help="folder of the specs; default: %(default)s")
    given = parser.parse_args(arguments)
    try:
        made = pages(given.specs)
    except Unusable as unusable:
        for finding in unusable.findings:
            print(quote(unusable.source, finding), file=sys.stderr)
        return 2
    except MissingCairo as missing:
        print(missing, file=sys.stderr)
        return 2
    given.folder.mkdir(parents=True, exist_ok=True)
    for name, content in made.items():
        (given.folder / name).write_bytes(content)
    print(f"{len(made)} files written to {given.folder}")
    for name in strangers(given.folder, made):
        if name.endswith((".svg", ".png")):  # a sheet or picture that an earlier drawing had
            (given.folder / name).unlink()
            print(f"{given.folder / name} is not made any more and was removed", file=sys.stderr)
        else:
            print(f"{given.folder / name} is not made any more: delete it", file=sys.stderr)
    return 0


if __name__ == "__main__":
    sys.exit(main())
