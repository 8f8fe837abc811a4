"""Steps that several worksheets share."""
