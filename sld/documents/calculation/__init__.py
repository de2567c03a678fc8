"""The calculation as a document: every rating with its formula, the numbers put in, its source and what governed."""
