"""The crew at its posts: enough of them, who watch, with what they need at hand."""
