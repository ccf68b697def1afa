"""Paper: flowcharts, steps, record sheets, pin charts, walk-away lists, the whole binder."""

from pullcord.printing.output import (
    KINDS,
    Kind,
    PrintedFile,
    pdf_uri,
    print_sheets,
    procedure_pdfs,
)
from pullcord.printing.paper import PaperName
from pullcord.printing.press import Press, read_press

__all__ = [
    "KINDS",
    "Kind",
    "PaperName",
    "Press",
    "PrintedFile",
    "pdf_uri",
    "print_sheets",
    "procedure_pdfs",
    "read_press",
]
