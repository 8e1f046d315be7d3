"""The motion that a passive prop can really make: flown periods of patterns, and their figures."""
