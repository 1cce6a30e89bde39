"""The ignition sequence: controls, burners and their companions as state machines over time."""
