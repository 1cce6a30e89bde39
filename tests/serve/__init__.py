"""What an editor asks, and the language server."""
