"""A local cluster of two workers gives the files of one process byte for byte; what is wrong with one is said."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator
from contextlib import nullcontext
from pathlib import Path
from types import SimpleNamespace

import pytest
from command import ROOT, SMALL, sld

dask = pytest.importorskip("dask")
distributed = pytest.importorskip("distributed")

from sld.cli import cluster  # noqa: E402 - after the skip

pytestmark = pytest.mark.filterwarnings("ignore::DeprecationWarning", "ignore::ResourceWarning")

BAD = SMALL.replace("phases: 1, voltage", "phase: 1, voltage")


@pytest.fixture(scope="module")
def address() -> Iterator[str]:
    """The address of a cluster of two workers, which give up a spec that kills one of them.

    They are copies of a process that has loaded the program; it takes its path from the environment.
    """
    loads = os.pathsep.join((str(ROOT), str(Path(__file__).parent)))
    with (
        pytest.MonkeyPatch.context() as changed,
        dask.config.set(
            {"distributed.scheduler.allowed-failures": 0, "distributed.worker.multiprocessing-method": "forkserver"}
        ),
    ):
        changed.setenv("PYTHONPATH", loads)
        distributed.utils.get_mp_context().set_forkserver_preload(["distributed", "worker_faults"])
        with distributed.LocalCluster(
            n_workers=2, threads_per_worker=1, dashboard_address=":0", silence_logs=50,
            preload=str(Path(__file__).with_name("worker_faults.py")),
        ) as found:  # fmt: skip
            yield found.scheduler_address


@pytest.fixture
def many(tmp_path: Path) -> Path:
    for number in range(4):
        path = tmp_path / "many" / ("north" if number % 2 else "") / f"s{number}.yaml"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(BAD if number == 3 else SMALL.replace("Mill", f"Mill {number}"), encoding="utf-8")
    return tmp_path / "many"


def contents(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_two_workers_give_the_files_and_lines_of_one_process(
    many: Path, tmp_path: Path, address: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The paths are relative to a folder in which the workers are not."""
    monkeypatch.chdir(tmp_path)
    one = sld("draw", "many", "-o", "one", "--to", "svg,pdf,csv", "--jobs", 1)
    two = sld("draw", "many", "-o", "two", "--to", "svg,pdf,csv", "--cluster", address)
    assert (one.exit_code, two.exit_code) == (2, 2), two.stderr
    assert contents(tmp_path / "one") == contents(tmp_path / "two")
    assert len(contents(tmp_path / "one")) > 20
    assert one.stdout.splitlines() == [
        os.path.relpath(each).replace("two/", "one/") for each in two.stdout.splitlines()
    ]
    assert two.stderr.splitlines()[-1] == "4 checked: 3 clean, 1 unusable"
    again = sld("draw", "many", "-o", "two", "--to", "svg,pdf,csv", "--cluster", address)
    assert again.stderr.splitlines()[-1] == "4 checked: 3 clean, 1 unusable; 3 unchanged and not drawn again"


def test_the_rest_is_done_where_a_spec_kills_its_worker(many: Path, address: str) -> None:
    (many / "kills.yaml").write_text(SMALL, encoding="utf-8")
    result = sld("check", many, "--cluster", address)
    assert result.exit_code == 3
    assert result.stderr.splitlines()[-1] == "5 checked: 3 clean, 1 unusable, 1 killed"
    assert f"{many / 'kills.yaml'}: its process was killed" in result.stderr


def test_a_spec_without_end_is_stopped_on_its_worker(many: Path, address: str) -> None:
    endless = many / "endless.yaml"
    endless.write_text(SMALL, encoding="utf-8")
    result = sld("check", endless, "--cluster", address, "--seconds", 0.5)
    assert (result.exit_code, result.stdout) == (3, "")
    assert result.stderr.startswith(f"{endless}: stopped, it took longer than 0.5 s")


def test_workers_with_another_program(many: Path, address: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(cluster, "program", os.getpid)  # which each process answers otherwise
    result = sld("check", many, "--cluster", address)
    assert result.exit_code == 2
    assert "has another version of sld or its libraries; install the same on all of them" in result.stderr


def test_workers_with_another_disk(many: Path, tmp_path: Path, address: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """The file that they are to see is on none of their disks."""
    nowhere = nullcontext(SimpleNamespace(name=str(tmp_path / "nowhere")))
    monkeypatch.setattr(tempfile, "NamedTemporaryFile", lambda **_: nowhere)
    result = sld("draw", many, "-o", tmp_path / "out", "--cluster", address)
    assert result.exit_code == 2
    assert f"does not see the folder {tmp_path / 'out'}; share it with all of them" in result.stderr


@pytest.mark.parametrize("address", ["tcp://127.0.0.1:9", "nowhere at all"])
def test_an_address_where_no_scheduler_is(many: Path, address: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(cluster, "_REACHED_WITHIN_S", 0.3)
    result = sld("check", many, "--cluster", address)
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr.startswith(f"{address}: no scheduler of Dask answers here")
