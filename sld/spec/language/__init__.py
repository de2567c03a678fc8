"""The spec language described from its own blocks: where each stands, what each key takes, and a JSON Schema of it."""
