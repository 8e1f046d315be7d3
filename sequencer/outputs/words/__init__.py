"""Blocks, hands, places and postures in a performer's words."""
