"""What Pullcord costs beside what it could be measured against: `python -m benchmarks`."""
