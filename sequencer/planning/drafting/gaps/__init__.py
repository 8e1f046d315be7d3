"""What there is to fill: the stretches of the song, what the music asks for there, and what stays."""
