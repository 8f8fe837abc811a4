"""The machinery on which a worksheet is one file: declare, read, run, link."""
