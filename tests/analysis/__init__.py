"""Cost and order, and the small procedures they are tried on."""
