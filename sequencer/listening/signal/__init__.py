"""From a file to samples, and from samples to what an ear takes from them."""
