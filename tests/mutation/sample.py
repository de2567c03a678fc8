"""A sample of the mutants of many files, in which each mutant is as likely as any other."""

from __future__ import annotations

import ast
import random
from collections.abc import Mapping, Sequence

from concerned_tests import ROOT, prints
from mutants import mutants_of

__all__ = ["drawn_from", "sample_of"]


def sample_of(paths: Sequence[str], size: int, seed: int) -> dict[str, frozenset[int]]:
    """Return, for each file that has some of the sample, the places of these among its mutants."""
    trees = {path: ast.parse((ROOT / path).read_text(encoding="utf-8")) for path in paths}
    return drawn_from({path: len(mutants_of(tree, prints=prints(path))) for path, tree in trees.items()}, size, seed)


def drawn_from(counts: Mapping[str, int], size: int, seed: int) -> dict[str, frozenset[int]]:
    """Draw from files with so many mutants each, without putting back; all where there are no more than `size`."""
    every = [(path, place) for path in sorted(counts) for place in range(counts[path])]
    drawn = random.Random(seed).sample(every, min(size, len(every)))
    files = sorted({path for path, _ in drawn})
    return {path: frozenset(place for where, place in drawn if where == path) for path in files}
