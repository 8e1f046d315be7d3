"""What a group brings along: one law, one pattern, one check, one rule profile, one sheet."""
