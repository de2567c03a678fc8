"""Spec -> System: references resolved, repeats expanded, designations given, defaults said as assumptions."""

from sld.model.build import build, systems
from sld.model.system import System

__all__ = ["System", "build", "systems"]
