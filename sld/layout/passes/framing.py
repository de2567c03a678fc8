"""The frames of enclosures.

Before: lanes, columns, heights. After: one frame around the members of each, one module clear of their lanes and
labels, its caption in the room reserved at its upper left corner.
"""

from __future__ import annotations

from sld.layout.passes.columns import Columns
from sld.layout.passes.grid import CLEARANCE_MM
from sld.layout.passes.heights import CAPTION_MARGIN_MM, Heights
from sld.layout.passes.lanes import Lanes
from sld.layout.passes.stack import line_pitch_mm
from sld.layout.plan import Frame
from sld.symbols.stroke import Box, Text
from sld.symbols.typeface import ascent_mm

__all__ = ["frames_of"]


def frames_of(lanes: Lanes, columns: Columns, heights: Heights) -> tuple[tuple[Frame, ...], tuple[Text, ...]]:
    """Return the frames, and the further lines of captions that need more than one."""
    frames: list[Frame] = []
    texts: list[Text] = []
    for place, members in enumerate(lanes.frames.members):
        span = heights.frames[place]
        right, left = min(lanes.of[m] for m in members), max(lanes.of[m] for m in members)
        box = Box(
            columns.frame_left_mm(left), heights.axis_mm[span.head] - span.above_mm,
            columns.channels[right].frame_right_mm, heights.axis_mm[span.foot] + span.below_mm,
        )  # fmt: skip
        x, y = box.left_mm + CLEARANCE_MM / 2, box.top_mm + CAPTION_MARGIN_MM + ascent_mm(2.5)
        lines = [
            Text((x, y + line_pitch_mm() * number), line)
            for number, line in enumerate(columns.captions[place] or ("",))
        ]
        frames.append(Frame(lanes.frames.enclosure[place], box, lines[0]))
        texts.extend(lines[1:])
    return tuple(frames), tuple(texts)
