"""One fault at a time: what a unit does with a lead open, earthed or touching, a contact stuck."""
