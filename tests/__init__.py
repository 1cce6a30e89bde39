"""The tests, laid out as the package is, with the contracts of the project beside them."""
