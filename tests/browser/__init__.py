"""The built site in a browser, as a reader uses it."""
