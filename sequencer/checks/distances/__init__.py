"""Whether all keep clear: performers, audience, scenery, ceiling; as planned and with human error."""
