"""The page of `sld watch`: drawn again when a file of the spec is saved, served to this machine alone."""
