"""Rules for the setting and mounting of ignition controls."""
