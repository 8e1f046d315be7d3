"""The page engine of the sheets: paper, type, words, marks and signs; knows no show."""
