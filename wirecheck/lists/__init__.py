"""Lists of a diagram to order by and to work from: its wires, its parts, its terminals."""
