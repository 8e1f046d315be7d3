"""Performers on the floor: body, props and walk as points that move in the stage frame."""
