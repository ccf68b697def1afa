"""Tests of the flowcharts."""
