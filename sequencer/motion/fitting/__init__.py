"""Where a pattern fits a body: place, shape, posture and pace, found once and kept."""
