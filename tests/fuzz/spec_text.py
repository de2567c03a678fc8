"""Plain data as the text of a spec, as several writers would write it; sometimes with a slip of the hand in it."""

from __future__ import annotations

import json
from random import Random
from typing import Any

import yaml

__all__ = ["written"]

SLIPS = ["", " ", ":", "-", "{", "}", "[", "]", '"', "'", "\t", "\n", "#", "&a", "*a", "!!x", "\\", "\\ud83d", "\u202e",
         "\x07", ",", "|", "%", "\ufeff"]  # fmt: skip


def written(data: dict[str, Any], random: Random) -> str:
    """Return a text: JSON with or without escapes, or YAML; one in twelve with a slip."""
    form = random.randrange(4)
    if form == 0:
        text = yaml.safe_dump(data, allow_unicode=True, sort_keys=False, width=10_000)
    else:
        text = json.dumps(data, ensure_ascii=form == 1, indent=2 if form == 2 else None)
    if random.randrange(12) == 0:
        at = random.randrange(len(text) + 1)
        text = text[:at] + random.choice(SLIPS) + text[at + random.randrange(2) :]
    return text
