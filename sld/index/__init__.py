"""The index of a run: a page for a browser with a picture, the state and the files of each spec.

The page opens from a disk. Its own policy lets it load the pictures beside it and nothing else; without its program all
specs stand below each other.
"""
