"""Paper: flowcharts, steps, record sheets, pin charts, walk-away lists, the whole binder.

`output` gives finished PDFs. Nothing is imported here, so that what only needs the names of papers
and sheets does not wait for the rest.
"""
