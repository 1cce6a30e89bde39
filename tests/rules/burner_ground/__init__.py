"""Rules for the burner ground."""
