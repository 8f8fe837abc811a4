"""Calculation for wood-fired water heating: pure Python, SI inside, no input or output."""
