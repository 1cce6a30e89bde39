"""The lowest floor: plain data that every other floor speaks in."""
