"""Where everybody is on the floor: spots, ways, entrances, the venue."""
