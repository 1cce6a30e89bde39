"""From text to a diagram, and from a diagram's text to its canonical form."""
