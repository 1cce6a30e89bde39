"""A device replaced by another: which lead comes off where and goes where, and what is to fit."""
