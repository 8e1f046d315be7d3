"""What a page and the server say to each other: values, events, who may ask."""
