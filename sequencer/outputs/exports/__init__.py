"""Files for other programs: MIDI, captions, timetable, positions."""
