#!/usr/bin/env bash
# Brings the generated pages up to date: sources.md, the coverage table of db/README.md, the figures at the head of README.md.
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
import subprocess
told = subprocess.run(["build/pourbook", "check"], capture_output=True, text=True).stdout
values, sources = re.search(r"(\d+) values, .*?(\d+) sources", told).groups()
read = re.search(r"([\d.]+) % of the values were read", told).group(1)
page = open("README.md", encoding="utf-8").read()
page = re.sub(r"\*\*\d+ values from \d+ sources, [\d.]+ %", f"**{values} values from {sources} sources, {read} %", page)
open("README.md", "w", encoding="utf-8").write(page)
EOF
