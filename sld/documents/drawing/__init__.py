"""The drawing as a document: the diagram, and beside it what its readers look for."""
