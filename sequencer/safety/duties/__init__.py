"""Who is there, what each does, carries and watches."""
