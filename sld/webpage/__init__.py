"""A document as one page for a browser: its sheets, what was found, and how each rating came about.

The page needs nothing else: style, program, letters and pictures are in it, and its own policy forbids it to load more.
Without the program, and on paper, the sheets and the findings stand below each other.
"""
