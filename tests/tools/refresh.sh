#!/usr/bin/env bash
# Brings the generated pages up to date: sources.md and the coverage table of db/README.md.
set -eu
cd "$(dirname "$0")/../.."
build/pourbook-compile --sources db >sources.md
build/pourbook-compile --coverage db >build/coverage.md
python3 - <<'EOF'
import re
page = open("db/README.md", encoding="utf-8").read()
table = open("build/coverage.md", encoding="utf-8").read()
head, mark, _ = page.partition("<!-- coverage: generated -->\n")
open("db/README.md", "w", encoding="utf-8").write(head + (mark or "<!-- coverage: generated -->\n") + table)
EOF
