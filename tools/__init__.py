"""Tools of the house: they write what is generated."""
