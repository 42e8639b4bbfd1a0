"""The stove as equations: its parameters, heat, spots, instruments, and the ensemble that carries the doubt."""
