"""What can be wrong with a procedure: one rule a file, found by looking, not listed anywhere.

`text` holds the rules that reading itself finds; the other folders hold a `check` each, told apart
by what they are given: see `run.py`.
"""
