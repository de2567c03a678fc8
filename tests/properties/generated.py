"""So many varied valid specs from a seed, the same ones each time: for benchmarks, for fuzzing, for a try by hand.

    .venv/bin/python tests/properties/generated.py 1000 --seed 3 --out /tmp/thousand

Ends with 1 when the reader refuses one of them.
They are those of `specs.py`: valid for the reader, and mostly bad designs. The same seed gives the same specs as long
as the library that draws them is of the same version.
"""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import Any

from hypothesis import HealthCheck, Phase, given, seed, settings

from sld import spec
from specs import specs

__all__ = ["generated", "put"]

_IN_A_FOLDER = 100


def generated(count: int, seed_number: int = 1) -> list[dict[str, Any]]:
    """Return so many specs as plain data."""
    found: list[dict[str, Any]] = []

    @seed(seed_number)
    @settings(
        max_examples=count,
        deadline=None,
        database=None,
        phases=(Phase.generate,),
        suppress_health_check=list(HealthCheck),
    )
    @given(specs())
    def collect(data: dict[str, Any]) -> None:
        found.append(data)

    collect()
    return found


def put(folder: Path, count: int, seed_number: int = 1) -> list[Path]:
    """Write so many specs, a hundred to a folder; return where they are."""
    paths = []
    for number, data in enumerate(generated(count, seed_number)):
        path = folder / f"{number // _IN_A_FOLDER:03}" / f"s{number:05}.yaml"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(json.dumps(data, ensure_ascii=False, indent=1), encoding="utf-8")
        paths.append(path)
    return paths


def _refused(paths: list[Path]) -> list[str]:
    """Return what the reader says of the specs that it does not take."""
    told = []
    for path in paths:
        try:
            spec.load(path)
        except spec.Unusable as unusable:
            told.append(f"{path}: {unusable.findings[0].message}")
    return told


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("count", type=int)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--out", type=Path, required=True)
    asked = parser.parse_args()
    paths = put(asked.out, asked.count, asked.seed)
    refused = _refused(paths)
    print(f"{len(paths)} specs in {asked.out}, of which {len(refused)} are refused", *refused, sep="\n")
    raise SystemExit(bool(refused))
