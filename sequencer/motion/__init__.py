"""Laws of hands and props, in the performer's body frame and in beats.

Body frame [m]: origin on the floor between the feet, x to the performer's right, y forward, z up.
"""
