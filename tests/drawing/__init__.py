"""Tests of the drawing floor."""
