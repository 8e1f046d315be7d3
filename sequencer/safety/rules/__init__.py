"""The rules in force for a show, its permit, and what its circumstances ask for."""
