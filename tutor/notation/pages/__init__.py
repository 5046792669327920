"""How do pages, copies and programs write what a keyboard writes otherwise? Spelled as one types it."""
