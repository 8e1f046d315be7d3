"""Drag of a ball in air."""

# [1] of a smooth ball between Reynolds numbers of 10³ and 2·10⁵; S. F. Hoerner, Fluid-Dynamic Drag, 1965, chapter 3
# (from memory). A wick of 10 cm at 1 to 15 m/s is at 7·10³ to 10⁵.
SPHERE_DRAG = 0.47
