"""Where a group stands, who walks when, who is mirrored, late or alone."""
