"""Physics: one module a subject, each function a law that carries its formula, its units, its ranges and its source."""
