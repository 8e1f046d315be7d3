"""What a show file may hold, record by record."""
