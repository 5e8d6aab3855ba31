"""What people get, made from finished results alone: figures, drawings, tables, the printed sheet, JSON, words.

Nothing is computed here but layout. Nothing heavy is imported until a figure or a document is asked for.
"""
