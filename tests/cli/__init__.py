"""The commands, called as a person or a script calls them."""
