"""Lets ``python -m wirecheck`` do what the ``wirecheck`` command does."""

from wirecheck.cli.main import main

if __name__ == "__main__":
    main()
