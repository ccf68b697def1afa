"""About comments that allow a finding: these rules explain, `allowance.py` checks."""
