"""What was found, what was accepted and what was assumed, as a document of its own."""
