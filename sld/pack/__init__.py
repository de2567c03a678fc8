"""A pack: the documents of a system in one PDF, their tables, and a manifest that says what all of it was made of."""
