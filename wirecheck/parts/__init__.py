"""The part library: kinds as data, what one part of a kind really has, and its attributes."""
