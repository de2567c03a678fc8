"""What `sld explain` prints of a table and of a device."""
