"""Everything the tool produces: tables, sheets, charts, sound and files for other programs. Knows nothing of the checks."""
