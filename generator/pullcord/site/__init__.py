"""What stands between finished pages and a site in its folder. Knows no site generator."""
