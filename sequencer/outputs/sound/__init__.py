"""Count tracks and clicks."""
