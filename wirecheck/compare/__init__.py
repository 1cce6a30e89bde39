"""Whether two diagrams do the same: by structure, by function, and what differs in leads."""
