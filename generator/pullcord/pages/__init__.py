"""What the templates print: every decision is made here."""

from pullcord.pages.site import site_pages

__all__ = ["site_pages"]
