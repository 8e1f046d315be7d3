"""What the page shows of a show, as plain values."""
