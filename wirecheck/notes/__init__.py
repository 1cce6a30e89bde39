"""Installation notes: documents with wiring in them, each block of it a diagram to check."""
