"""Each rule beyond its own examples: what else raises it, and what must not."""
