"""What an editor asks of a text: pure answers here, the protocols beside them."""
