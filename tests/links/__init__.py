"""Links that were given out, and the numbers they mean for ever."""
