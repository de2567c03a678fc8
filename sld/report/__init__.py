"""What a check found, for machines: the JSON form and its schema, SARIF 2.1.0, JUnit XML.

The JSON form is the source of the others. It is described, and versioned, in `schema.py`.
"""
