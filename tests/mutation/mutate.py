"""Mutation test: is each small fault in a formula, in a rule and in what prints them found by a test?

    python tests/mutation/mutate.py                           # sld/ratings, sld/rules, and the modules that print
    python tests/mutation/mutate.py sld/ratings/rcd.py sld/rules/dc
    python tests/mutation/mutate.py --changed-since main      # the files that differ from a revision
    python tests/mutation/mutate.py sld/model sld/layout/passes --about 8   # what is tried only where it is named
    python tests/mutation/mutate.py sld/rules --sample 80 --seed 1          # what share of a room is found, about
    python tests/mutation/mutate.py --tests-added             # only what survived, after tests were added

Prints killed and total of each file, then the survivors as file:line, function and what was changed. Ends with 1 where
a survivor is not listed in `survivors.csv`, where a listed one does not survive, or where less than 90 % are killed, of
the modules that print less than 95 %. A run that was stopped goes on where it was: results are kept in `.mutation/`
until a file of `sld/` or the tests changes. With `--every 5` one mutant in five is tried, with `--about 20` at most
20 of each file, the same ones each time; with `--sample 80 --seed 1` 80 of all files together, drawn at random.

A module is first put in its own place as it is. Where a test fails then, a mutant of it would be killed by that alone:
the module is set aside and named, and none of its mutants is counted.

Why not a library: those that change the code within the process pass over decorated functions, which all rules are, and
over the heads of modules; those that change the file start Python anew for each of some thousands of mutants. Here the
tests are collected once, and each mutant has a forked process that ends at the first test that fails.
"""

from __future__ import annotations

import argparse
import ast
import gc
import hashlib
import importlib
import json
import os
import pickle
import signal
import subprocess
import sys
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

import pytest
from concerned_tests import (
    PRINTING,
    ROOT,
    Calls,
    failing,
    folders_of,
    for_function,
    for_module,
    prepare,
    prints,
    watched,
)
from mutants import mutants_of
from sample import sample_of
from survivors import Key, compared, read_list

ROOMS = ("sld/ratings", "sld/rules", *PRINTING)
ASKED_FOR = ("sld/model", "sld/steps", "sld/layout/diagram", "sld/layout/passes")
"""Rooms that are tried only where they are named: what they do is seen through many others, so a run is long."""
KEPT = ROOT / ".mutation"
LEAST_KILLED_PERCENT, LEAST_KILLED_OF_PRINTING_PERCENT = 90.0, 95.0
KILLED, SURVIVED = "killed", "survived"
UNCHANGED, FEW_COUNT = -1, 60
"""In the place of a mutant's number: the module as it is, which must pass so many tests, those of the first drawing."""


@dataclass(frozen=True, slots=True)
class Tried:
    """What became of one mutant of a file."""

    path: str
    line: int
    function: str
    change: str
    outcome: str

    @property
    def key(self) -> Key:
        return self.path, self.function, self.change


def main() -> int:
    """Try the mutants of the files asked for and return the exit code."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("paths", nargs="*", default=None, help="files or folders, by default all")
    parser.add_argument("--changed-since", metavar="REV", help="only files that differ from this revision")
    parser.add_argument("--fresh", action="store_true", help="forget the results of a run that was stopped")
    parser.add_argument("--tests-added", action="store_true", help="what was killed stays killed; try survivors again")
    parser.add_argument("--every", type=int, default=1, metavar="N", help="only one in N mutants of each file")
    parser.add_argument("--about", type=int, metavar="N", help="at most N mutants of each file, evenly spread")
    parser.add_argument("--sample", type=int, metavar="N", help="N mutants of all files together, drawn at random")
    parser.add_argument("--seed", type=int, default=1, help="another sample for another number")
    asked = parser.parse_args()
    files = files_of(asked.paths or list(ROOMS), asked.changed_since)
    if not files:
        print(f"no file of {', '.join(ROOMS)} to try")
        return 0
    sample = sample_of(files, asked.sample, asked.seed) if asked.sample else None
    files = list(sample) if sample else files
    session = Session(files, Results(asked.fresh, asked.tests_added), Choice(asked.every, asked.about, sample))
    folders = sorted({folder for path in files for folder in folders_of(path)})
    os.chdir(ROOT)
    sys.path.insert(0, str(ROOT))  # this tree, whatever is installed
    code = pytest.main(["-s", "-q", "-o", "addopts=", "-p", "no:cacheprovider", "--no-summary", *folders], [session])
    if session.wrong or not session.done:
        print("the tests must pass before they are tried:", *session.wrong, f"(pytest ended with {code})", sep="\n  ")
        return 2
    return told(session, files if asked.every == 1 and not asked.about and not sample else ())


def files_of(paths: Sequence[str], changed_since: str | None) -> list[str]:
    """Return the modules under the paths, relative to the root, in order."""
    found: set[str] = set()
    for given in paths:
        place = (ROOT / given).resolve()
        found |= {each.relative_to(ROOT).as_posix() for each in ([place] if place.is_file() else place.rglob("*.py"))}
    if changed_since:
        command = ["git", "diff", "--name-only", changed_since, "--", *ROOMS, *ASKED_FOR]
        changed = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True).stdout.split()
        found &= set(changed)
    return sorted(path for path in found if path.startswith((*ROOMS, *ASKED_FOR)))


def _what_decides(tests: Sequence[str]) -> Iterator[Path]:
    """Yield the files on which the outcome of a mutant depends: sources, tables, tests, and how mutants are made."""
    for folder in ("sld", *tests):
        yield from (path for path in sorted((ROOT / folder).rglob("*")) if path.suffix in (".py", ".csv"))
    for stem in ("mutants", "picked_values", "mutated_module", "concerned_tests"):
        yield Path(__file__).with_name(f"{stem}.py")


class Results:
    """The outcomes so far, kept in a file for each set of test folders, named after the state of sources and tests."""

    def __init__(self, fresh: bool, tests_added: bool) -> None:
        KEPT.mkdir(exist_ok=True)
        self._files = {folders_of(room): self._file(folders_of(room)) for room in (*ROOMS, *ASKED_FOR)}
        if tests_added:
            self._keep_killed()
        for other in KEPT.glob("*.jsonl"):
            if fresh or other not in self._files.values():
                other.unlink()
        self._known: dict[Key, str] = {}
        for file in self._files.values():
            for line in file.read_text(encoding="utf-8").splitlines() if file.exists() else ():
                *key, outcome = json.loads(line)
                self._known[key[0], key[1], key[2]] = outcome

    def _keep_killed(self) -> None:
        """Carry over what an earlier state of the tests has killed already. The sources must be the same."""
        for old in [path for path in KEPT.glob("*.jsonl") if path not in self._files.values()]:
            lines = [line for line in old.read_text(encoding="utf-8").splitlines() if json.loads(line)[-1] != SURVIVED]
            for tests, file in self._files.items():
                if lines and folders_of(json.loads(lines[0])[0]) == tests:
                    file.write_text("".join(f"{line}\n" for line in lines), encoding="utf-8")

    @staticmethod
    def _file(tests: Sequence[str]) -> Path:
        digest = hashlib.sha256()
        for path in _what_decides(tests):
            digest.update(path.relative_to(ROOT).as_posix().encode() + path.read_bytes())
        return KEPT / f"{digest.hexdigest()[:16]}.jsonl"

    def outcome(self, key: Key, find: Callable[[], str]) -> str:
        """Return what became of a mutant, trying it where that is not known."""
        if key not in self._known:
            self._known[key] = find()
            with self._files[folders_of(key[0])].open("a", encoding="utf-8") as file:
                file.write(json.dumps([*key, self._known[key]], ensure_ascii=False) + "\n")
        return self._known[key]


@dataclass(frozen=True, slots=True)
class Choice:
    """Which mutants of a file are tried: one in so many, about so many, or those of a sample by file."""

    every: int = 1
    about: int | None = None
    sample: Mapping[str, frozenset[int]] | None = None

    def of(self, path: str, count: int) -> Collection[int]:
        """Return the places of those that are tried, of so many of a file."""
        if self.sample is not None:
            return self.sample.get(path, frozenset())
        return range(0, count, max(self.every, -(-count // self.about) if self.about else 1))


class Session:
    """The plugin that takes the place of pytest's loop over the tests."""

    def __init__(self, files: Sequence[str], results: Results, choice: Choice) -> None:
        self._files, self._results, self._choice = files, results, choice
        self.tried: list[Tried] = []
        self.set_aside: list[str] = []
        self.wrong: list[str] = []
        self.done = False

    def pytest_sessionstart(self) -> None:
        """Have generated examples the same each time, before the tests that use them are read."""
        from hypothesis import settings

        settings.register_profile("mutation", derandomize=True, database=None, deadline=None, max_examples=25)
        settings.load_profile("mutation")

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        items = session.items
        _read_tables()
        prepare(self._files)
        gc.collect()
        gc.freeze()
        concerned = {path: for_module(path, items) for path in self._files}
        places = sorted({place for near in concerned.values() for place in near})
        calls, seconds, self.wrong = _in_a_process_of_its_own(lambda: watched(items, places))
        if self.wrong:
            return True
        for path in self._files:
            tried = list(self._tried(path, items, concerned[path], calls, seconds))
            self.tried += tried
            killed = sum(each.outcome != SURVIVED for each in tried)
            if tried:
                print(f"{path}: {killed} of {len(tried)} killed ({100 * killed / len(tried):.0f} %)", flush=True)
        self.done = True
        return True

    def _tried(
        self, path: str, items: Sequence[pytest.Item], near: Sequence[int], calls: Calls, seconds: Sequence[float]
    ) -> Iterator[Tried]:
        source = (ROOT / path).read_text(encoding="utf-8")
        mutants = mutants_of(ast.parse(source), prints=prints(path))
        first = [items[each] for each in for_function(path, 0, near, calls)[:FEW_COUNT]]
        if mutants and _outcome(path, UNCHANGED, source, first, 600.0) != SURVIVED:
            self.set_aside.append(path)
            return
        for place in sorted(self._choice.of(path, len(mutants))):
            mutant = mutants[place]
            chosen = for_function(path, mutant.first_line, near, calls)
            limit_s = 5 + (2 if prints(path) else 10) * sum(seconds[each] for each in chosen)
            key = path, mutant.function, mutant.change

            def find(place: int = place, chosen: list[int] = chosen, limit_s: float = limit_s) -> str:
                return _outcome(path, place, source, [items[each] for each in chosen], limit_s)

            yield Tried(path, mutant.line, mutant.function, mutant.change, self._results.outcome(key, find))


def _read_tables() -> None:
    """Read every table once, so that the process of each mutant finds them read; tables are not mutated."""
    from sld.tables.table import table

    for path in sorted((ROOT / "sld" / "tables").glob("*.csv")):
        table(path.stem)


def _in_a_process_of_its_own(
    work: Callable[[], tuple[Calls, list[float], list[str]]],
) -> tuple[Calls, list[float], list[str]]:
    """Run the work where what the tests keep in memory does not stay."""
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        with os.fdopen(writing, "wb") as pipe:
            pickle.dump(work(), pipe)
        os._exit(0)
    os.close(writing)
    with os.fdopen(reading, "rb") as pipe:
        found = pickle.load(pipe)
    os.waitpid(child, 0)
    return found  # type: ignore[no-any-return]


def _outcome(path: str, place: int, source: str, items: Sequence[pytest.Item], limit_s: float) -> str:
    """Return what becomes of one mutant: killed by a test, by its own failing import, by time, or survived."""
    if not items:
        return SURVIVED
    child = os.fork()
    if child == 0:
        _try(path, place, source, items, limit_s)
    _, status = os.waitpid(child, 0)
    if os.WIFSIGNALED(status):
        if os.WTERMSIG(status) == signal.SIGINT:
            raise KeyboardInterrupt
        return "killed by time" if os.WTERMSIG(status) == signal.SIGPROF else "killed by a crash"
    return SURVIVED if os.WEXITSTATUS(status) == 0 else KILLED


def _try(path: str, place: int, source: str, items: Sequence[pytest.Item], limit_s: float) -> None:
    """Mutate the module, run the tests up to the first that fails, and end the process: 0 where none does."""
    from mutated_module import put_in_place

    signal.signal(signal.SIGINT, signal.SIG_DFL)
    signal.signal(signal.SIGPROF, signal.SIG_DFL)
    signal.setitimer(signal.ITIMER_PROF, limit_s)
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, 1)
    os.dup2(nowhere, 2)
    try:
        tree = ast.parse(source)
        if place != UNCHANGED:
            mutants_of(tree, prints=prints(path))[place].put_in()
        put_in_place(
            importlib.import_module(path.removesuffix(".py").removesuffix("/__init__").replace("/", ".")), tree
        )
        for item, following in zip(items, [*items[1:], None], strict=True):
            if failing(item, following):
                os._exit(1)
    except BaseException:
        os._exit(1)
    os._exit(0)


def told(session: Session, files: Sequence[str]) -> int:
    """Print what survived, what was set aside and the totals; return the exit code."""
    reasons = read_list()
    survivors = [each for each in session.tried if each.outcome == SURVIVED]
    unlisted, idle = compared(reasons, [each.key for each in survivors], files)
    for each in survivors:
        reason = reasons.get(each.key, "NOT LISTED")
        print(f"{each.path}:{each.line} {each.function}: {each.change}\n    {reason}")
    for path in session.set_aside:
        print(f"{path}: set aside, because tests fail with the module put in its own place, unchanged")
    for key in idle:
        print(f"listed in survivors.csv, but does not survive: {': '.join(key)}")
    too_few = False
    for printing, least_percent in ((False, LEAST_KILLED_PERCENT), (True, LEAST_KILLED_OF_PRINTING_PERCENT)):
        of_these = [each for each in session.tried if prints(each.path) == printing]
        if of_these:
            killed = sum(each.outcome != SURVIVED for each in of_these)
            percent = 100 * killed / len(of_these)
            print(f"{killed} of {len(of_these)} mutants killed ({percent:.1f} %), at least {least_percent:g} % must be")
            too_few |= percent < least_percent
    print(f"{len(survivors)} survive, {len(unlisted)} of them not listed")
    return 1 if unlisted or idle or too_few or session.set_aside else 0


if __name__ == "__main__":
    sys.exit(main())
