"""The words everything else is written in: quantities, places in a text, the diagram."""
