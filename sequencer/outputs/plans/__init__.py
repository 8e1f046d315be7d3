"""Pictures of the stage from above."""
