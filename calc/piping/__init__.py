"""Piping as parts and pipes, the ways water can take through them, and the rules that a system has to keep to."""
