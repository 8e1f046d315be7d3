"""What is handed over: tables, sheets, charts, sound, files for other programs; knows no check."""
