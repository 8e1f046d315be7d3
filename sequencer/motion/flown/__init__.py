"""The motion that a passive prop can really make: the head's path nearest to a drawing that a line and an arm allow."""
