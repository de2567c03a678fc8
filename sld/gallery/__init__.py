"""The generated pages of `gallery/`: drawings, the spec language, rules, tables and symbols. `python -m sld.gallery`."""
