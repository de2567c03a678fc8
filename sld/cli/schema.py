"""`sld schema`: the spec language as a JSON Schema, for editors."""

from __future__ import annotations

from sld.cli.terminal import show_json

__all__ = ["schema"]


def schema() -> None:
    """Print the JSON Schema of a spec (draft 2020-12), with which an editor completes and checks while you write.

    Example: sld schema > spec.schema.json
    """
    from sld.spec.language.schema import schema as made

    show_json(made())
