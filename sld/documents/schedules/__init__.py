"""Schedules as documents of their own."""
