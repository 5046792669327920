"""How do symbols join to a formula, and what does it add up to? The grammar and its table."""
