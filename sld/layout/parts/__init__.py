"""A Diagram that fits no one sheet -> several, each a readable part, and the overview of them. `split.py` leads."""
