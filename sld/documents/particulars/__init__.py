"""The particulars of an installation: who, where, at which supply, with which sources."""
