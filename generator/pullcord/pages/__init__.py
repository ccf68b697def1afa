"""What the templates print: every decision is made here."""
