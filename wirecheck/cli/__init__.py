"""The commands: one module each, holding the words of its call; the work is the API's."""
