"""System, ratings and findings -> documents: what is told, section by section, before words and places are chosen.

A document computes nothing. Each cell of its tables is a value with what it came from, or says why there is none.
"""
