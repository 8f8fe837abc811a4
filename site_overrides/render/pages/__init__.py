"""What only whole pages need, when the site is built: lists of everything, and numbers in prose."""
