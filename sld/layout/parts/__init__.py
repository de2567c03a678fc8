"""A Diagram that fits no one sheet, cut into parts that each do, joined by marks, and the overview of them.

`parts.py` leads: `cut_places.py` says where to cut, `cut.py` cuts, `part_diagram.py` gives each part
what belongs to it.
"""
