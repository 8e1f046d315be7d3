"""What follows the search: sizes, support, entries of the file, and what the checks forbid."""
