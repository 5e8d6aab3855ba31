"""What the program has to say, as codes with figures: never a sentence.

A message is named by an abstract method of a topic; its docstring tells whoever words it what it means. The
words of each language are in `stickwright.catalogue`, which nothing below the report imports.
"""
