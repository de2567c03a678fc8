"""The public door, `import sld`: the stages of `sld.run` for programs and notebooks.

What is public is named in `sld/__init__.py`. A `Design` is a spec that was read, rated and reviewed, a `Document`,
such as its drawing, the sheets made of it. Both are frozen and keep no state elsewhere, so that threads may share them.
"""
