"""What a person does to a show file, as operations with names: each text to text, whole or not at all."""
