"""Everything that is measured before anything is placed: the results of the passes up to the heights, together."""

from __future__ import annotations

from collections.abc import Sequence

from sld.frozen import dataclass
from sld.layout.passes.cabling import Cabling
from sld.layout.passes.columns import Columns
from sld.layout.passes.heights import Heights
from sld.layout.passes.lanes import Lanes
from sld.layout.passes.rows import Rows
from sld.layout.passes.stack import Stack
from sld.layout.passes.tree import Tree

__all__ = ["Measured"]


@dataclass(frozen=True, slots=True)
class Measured:
    """What each pass returned. stacks: the contents of the cells; node i of the tree is item i."""

    tree: Tree
    rows: Rows
    lanes: Lanes
    cabling: Cabling
    stacks: Sequence[Stack]
    columns: Columns
    heights: Heights
