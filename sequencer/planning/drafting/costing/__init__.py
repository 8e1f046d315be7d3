"""The problem of a draft: what each move and each passage costs in each slot, as tables for the search."""
