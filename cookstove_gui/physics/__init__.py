"""Pure functions of SI numbers and arrays, one file a subject; knows nothing of the rest of the project."""
