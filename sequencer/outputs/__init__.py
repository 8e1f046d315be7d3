"""What the tool hands over: tables, sheets, charts, traces. Knows no check."""
