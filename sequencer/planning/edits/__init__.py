"""Changes that may mend a finding, smallest first."""
