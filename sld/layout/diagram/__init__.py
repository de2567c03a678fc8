"""System + ratings -> Diagram: what is drawn, with which symbol and which words, and what once for many. No places.

`chart.py` makes the Diagram; `fold.py` draws equal branches once; `wrapping.py` breaks the lines.
"""
