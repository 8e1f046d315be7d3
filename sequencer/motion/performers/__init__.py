"""Performers on the floor: body, props and walking path as points moving in the stage frame."""
