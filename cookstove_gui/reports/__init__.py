"""A session as a dated page for someone else."""
