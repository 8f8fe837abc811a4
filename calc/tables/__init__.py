"""Small tables taken from open data, each with its origin and licence."""
