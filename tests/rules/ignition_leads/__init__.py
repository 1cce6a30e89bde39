"""Rules for ignition and sense leads."""
