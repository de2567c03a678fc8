"""Which specs a command was given: files, folders, patterns, or `-` for a list of these on standard input."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator
from dataclasses import field
from glob import glob, has_magic
from pathlib import Path

from sld.frozen import dataclass
from sld.spec.is_spec import is_spec

__all__ = ["HELP", "Given", "Search"]

HELP = (
    "Specs (YAML or JSON): files, folders with all below them that end in .yaml or .yml, patterns in quotes, or - for "
    "a list of these on standard input, one a line."
)
ENDINGS = (".yaml", ".yml")
_MOST_NAMED = 3
_LIST = Path("-")


@dataclass(frozen=True, slots=True)
class Given:
    """A spec to deal with. below: the folder of its files, seen from the folder for all files."""

    path: Path
    below: Path = Path()


@dataclass(slots=True)
class Search:
    """The search for specs. out: the folder that is written to, in which none is looked for.

    left_out: lines about files of a folder that are no specs. problems: lines about what could not be searched.
    """

    out: Path | None = None
    left_out: list[str] = field(default_factory=list)
    problems: list[str] = field(default_factory=list)

    def of(self, words: Iterable[Path]) -> list[Given]:
        """Return the specs that the words of a command line lead to, in their order, those of a folder by name.

        A file keeps no folder; what a folder or a pattern leads to keeps the folders below its beginning.
        """
        found: dict[Path, Given] = {}
        for word in words:
            for line in _listed() if word == _LIST else (word,):
                for each in self._at(line):
                    found.setdefault(each.path, each)
        return list(found.values())

    def _at(self, word: Path) -> Iterable[Given]:
        if word.is_dir():
            return self._in_folder(word)
        if has_magic(str(word)) and not os.path.lexists(word):
            return self._of_pattern(word)
        return (Given(word),)

    def _in_folder(self, folder: Path) -> list[Given]:
        """Return the specs in a folder and below; what is hidden is passed over."""
        files = [path for path in self._files(folder) if path.suffix in ENDINGS]
        specs = [path for path in sorted(files) if is_spec(path)]
        if others := [str(path) for path in sorted(set(files) - set(specs))]:
            more = f" and {len(others) - _MOST_NAMED} more" if len(others) > _MOST_NAMED else ""
            self.left_out.append(f"{folder}: left out, as not a spec: {', '.join(others[:_MOST_NAMED])}{more}")
        if not specs:
            self.problems.append(f"{folder}: there is no spec in this folder")
        return [Given(path, path.parent.relative_to(folder)) for path in specs]

    def _files(self, folder: Path) -> Iterator[Path]:
        def unreadable(problem: OSError) -> None:
            self.problems.append(f"{problem.filename}: cannot read this folder: {problem.strerror}")

        for place, folders, names in os.walk(folder, onerror=unreadable):
            folders[:] = [name for name in folders if not name.startswith(".") and not self._is_out(Path(place, name))]
            yield from (Path(place, name) for name in names if not name.startswith("."))

    def _is_out(self, folder: Path) -> bool:
        """Return whether a folder is the one written to; the present folder is that only for want of another."""
        return self.out is not None and self.out != Path() and folder.resolve() == self.out.resolve()

    def _of_pattern(self, pattern: Path) -> list[Given]:
        """Return the files, and the specs of the folders, that match a pattern."""
        start = Path(*_until_magic(pattern.parts[:-1]))
        matches = sorted(Path(each) for each in glob(str(pattern), recursive=True))
        if not matches:
            self.problems.append(f"{pattern}: no file matches this pattern")
        inside = pattern.name == "**"  # which matches each folder and what is in it
        found = []
        for path in matches:
            if path.is_dir():
                found += [] if inside else self._in_folder(path)
            elif not inside or (path.suffix in ENDINGS and is_spec(path)):
                found.append(Given(path))
        return [Given(each.path, each.path.parent.relative_to(start)) for each in found]


def _until_magic(parts: Iterable[str]) -> Iterator[str]:
    for part in parts:
        if has_magic(part):
            return
        yield part


def _listed() -> list[Path]:
    """Return the paths listed on standard input, one a line; empty lines are passed over."""
    lines = sys.stdin.buffer.read().splitlines() if sys.stdin else []
    return [path for line in lines if line.strip() and (path := Path(os.fsdecode(line))) != _LIST]
