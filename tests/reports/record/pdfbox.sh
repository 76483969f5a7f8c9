#!/usr/bin/env bash
# The marks of an XFDF file as Apache PDFBox reads them, as JSON. Usage: pdfbox.sh FILE.xfdf
# Debian packages libpdfbox2-java, bsh and default-jre-headless.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
jars=$(printf ':/usr/share/java/%s.jar' bsh pdfbox2 fontbox2 commons-logging)
exec java -cp "${jars#:}" bsh.Interpreter "$here/pdfbox.bsh" "$1"
