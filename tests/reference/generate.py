"""Makes every file of reference cases anew, beside this script."""

from pathlib import Path

import lines
import networks
import properties
import sizing_tables
import transients

if __name__ == "__main__":
    here = Path(__file__).parent
    for part in (networks, transients, lines, properties):
        part.main(here)
    sizing_tables.main()
