"""Verdicts on a show: each returns findings, none draws or prints."""
