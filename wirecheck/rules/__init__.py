"""The rules: one mistake each, in the trade's words, decided on what is drawn."""
