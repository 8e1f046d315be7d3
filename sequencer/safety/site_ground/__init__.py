"""The ground of the site: where people stand and go, and what reaches them."""
