"""Tests of wirecheck/properties/."""
