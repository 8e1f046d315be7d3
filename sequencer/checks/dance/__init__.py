"""Whether it can be danced: joins, tethers, reach, walks, and a count that can be relied on."""
