"""Processes that check, draft and print while the page goes on."""
