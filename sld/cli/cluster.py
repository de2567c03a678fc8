"""A cluster that shares the specs of a run: the workers of a Dask scheduler, by its executor of `concurrent.futures`.

The workers read and write the same folders, and have the same program: both are asked of each of them before the first
spec. The scheduler's own setting says how often a spec is tried whose worker was killed; the bound on memory is the
workers'.
"""

from __future__ import annotations

import os
import tempfile
from collections.abc import Callable, Iterator
from concurrent.futures import Future, wait
from contextlib import suppress
from pathlib import Path

from sld.cli.again import program
from sld.cli.crew import Done, Waiting, killed
from sld.cli.given import Given
from sld.cli.terminal import silence

__all__ = ["Cluster", "NoCluster"]

_REACHED_WITHIN_S = 10
_WORKERS_WITHIN_S = 20
"""How long a cluster without workers is given to start one."""


class NoCluster(Exception):  # noqa: N818 - what is wrong is said by its text
    """There is no cluster that could be used, and why."""


class Cluster:
    """The workers of a cluster. out: the folder that they are to write to, None where nothing is written."""

    def __init__(self, address: str, work: Callable[[Given], Done], out: Path | None) -> None:
        """Reach the cluster. Raises NoCluster."""
        try:
            from distributed import Client, KilledWorker
        except ImportError:
            raise NoCluster(
                "--cluster needs the package distributed; install it with: pip install 'sld[cluster]'"
            ) from None
        silence("distributed", "asyncio")  # what is to be told, the run tells
        self.lost: type[Exception] = KilledWorker
        self._work = work
        try:
            self._client = Client(address, timeout=_REACHED_WITHIN_S, set_as_default=False)
        except (OSError, ValueError) as problem:  # a TimeoutError is an OSError
            raise NoCluster(f"{address}: no scheduler of Dask answers here: {problem}") from None
        try:
            self.width = self._ready(address, out)
        except BaseException:
            self._client.close()
            raise
        self._executor = self._client.get_executor(pure=False)

    def submit(self, given: Given) -> Future[Done]:
        """Hand out a spec."""
        future: Future[Done] = self._executor.submit(self._work, given)
        return future

    def again(self, waiting: Waiting) -> Iterator[Done]:
        """Try the first spec once more, after all others that were handed out: one of those may be to blame."""
        wait([future for _, future in waiting])
        given, _ = waiting.popleft()
        future = self.submit(given)
        yield killed(given) if isinstance(future.exception(), self.lost) else future.result()

    def close(self) -> None:
        """End; what is begun on a worker is finished there, and not told."""
        self._executor.shutdown(wait=False)
        self._client.close()

    def _ready(self, address: str, out: Path | None) -> int:
        """Return how many specs the workers deal with at once. Raises NoCluster where one of them cannot."""
        with suppress(TimeoutError):  # one that was lost is started again by what watches it
            self._client.wait_for_workers(1, timeout=_WORKERS_WITHIN_S)
        threads = self._client.nthreads()
        if not threads:
            raise NoCluster(f"{address}: the cluster has no workers; start some and try again")
        programs = self._client.run(program, on_error="return")
        ours = program()
        for worker, its in programs.items():
            if its != ours:
                has = "cannot load sld" if isinstance(its, Exception) else "has another version of sld or its libraries"
                raise NoCluster(f"{address}: the worker {worker} {has}; install the same on all of them")
        if out is not None:
            self._see(address, out)
        return sum(threads.values())

    def _see(self, address: str, out: Path) -> None:
        """Raise NoCluster where a worker has another folder of this name, or none."""
        try:
            out.mkdir(parents=True, exist_ok=True)
            with tempfile.NamedTemporaryFile(dir=out, prefix=".sld-seen-") as here:
                seen = self._client.run(os.path.exists, here.name)
        except OSError as problem:
            raise NoCluster(f"{out}: cannot write: {problem.strerror or problem}") from None
        for worker, sees in seen.items():
            if not sees:
                raise NoCluster(
                    f"{address}: the worker {worker} does not see the folder {out}; share it with all of them"
                )
