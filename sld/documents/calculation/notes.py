"""What a calculation is based on and how it is read."""

from __future__ import annotations

from sld.documents.section import Paragraphs
from sld.model.system import System
from sld.model.wording import profile_word
from sld.words import phrase

__all__ = ["notes"]


def notes(system: System) -> Paragraphs:
    """Return the cautions that belong on a calculation, and how it is read."""
    texts = (
        phrase(
            "Design aid. All values are to be checked by a person licensed for such work, against the local rules, the "
            "network operator's conditions and the makers' manuals, which take precedence over this calculation. What "
            "is marked from memory was not compared with the standard."
        ),
        phrase(
            "Rule profile: {profile}. By circuit, in the order of the energy: strings, inputs, DC side, inverter, AC "
            "side, boards, supply; then earthing, data bus and the whole system.",
            profile=profile_word(system.profile),
        ),
        phrase(
            "Values are computed with all digits and printed with three, those put in with four. What is equal for "
            "several devices stands once, their designations as a range."
        ),
    )
    return Paragraphs("notes", phrase("Notes"), texts, numbered=True, sign="warning_triangle")
