"""Sheets for finding a fault: the chart as a picture and as steps to follow, and the record."""
