"""The checker of declarations: in tests, and on the desktop when a worksheet is first used; the page has none of it."""
