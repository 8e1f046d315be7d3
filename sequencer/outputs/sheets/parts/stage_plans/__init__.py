"""Plans of the stage, and what stands and moves on them."""
