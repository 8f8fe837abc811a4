"""Everything that is drawn but the charts: `fixed/` by hand, the rest from numbers and descriptions."""
