"""Whether the fire is safe: burns, fuel, crew, tools, weather, house rules."""
