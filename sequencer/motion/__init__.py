"""Hands and props in motion, from the law of one hand to the distances of a whole cast.

Body frame [m]: origin on the floor between the feet, x to the performer's right, y forward, z up.
"""
