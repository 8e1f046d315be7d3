"""The version, for every room: the package's root, which offers the face, is imported by none of them."""

__version__ = "0.1.0"
