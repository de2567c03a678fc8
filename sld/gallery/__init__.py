"""The generated pages of `gallery/`: drawings, spec language, rules, tables, symbols. Run `python -m sld.gallery`."""
