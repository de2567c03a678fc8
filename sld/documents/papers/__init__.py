"""The list of papers that belong to an installation and are not made here."""
