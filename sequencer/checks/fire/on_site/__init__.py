"""The place: audience, exits, fuel and wind, and what comes down or is warm there."""
