"""The library's front door: one function a verb."""
