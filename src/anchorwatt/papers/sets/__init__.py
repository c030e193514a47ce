"""The papers of a job, one module a set: what goes into each, from the assessment alone."""
