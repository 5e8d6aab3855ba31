"""``python -m stickwright``."""

import sys

from stickwright.cli import main

sys.exit(main())
