"""Asks the same questions in a spreadsheet program, without a window, and prints how long each took as JSON.

usage: in-spreadsheet.py SOFFICE LOTS.csv MOVEMENTS.csv WORDS LOT-NUMBER
"""

import json
import pathlib
import subprocess
import sys
import tempfile
import time

import uno
from com.sun.star.beans import PropertyValue
from com.sun.star.connection import NoConnectException
from com.sun.star.sheet import TableFilterField
from com.sun.star.sheet.FilterOperator import EQUAL

VARIETY_COLUMN = 2
# Comma, double quote, UTF-8, from the first line.
CSV = "44,34,76,1"


def prop(name, value):
    made = PropertyValue()
    made.Name = name
    made.Value = value
    return made


def connect(pipe):
    local = uno.getComponentContext()
    resolver = local.ServiceManager.createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", local)
    for _ in range(240):
        try:
            return resolver.resolve(f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext")
        except NoConnectException:
            time.sleep(0.25)
    raise SystemExit("The spreadsheet program did not answer.")


def main():
    soffice, lots_file, movements_file, words, lot_number = sys.argv[1:]
    with tempfile.TemporaryDirectory() as profile:
        pipe = f"bench-{pathlib.Path(profile).name}"
        begun = time.perf_counter()
        program = subprocess.Popen(
            [
                soffice,
                "--headless",
                "--norestore",
                "--nologo",
                f"--accept=pipe,name={pipe};urp;",
                f"-env:UserInstallation={pathlib.Path(profile).as_uri()}",
            ]
        )
        try:
            print(json.dumps(ask(connect(pipe), begun, lots_file, movements_file, words, lot_number)))
        finally:
            program.terminate()
            program.wait()


def ask(context, begun, lots_file, movements_file, words, lot_number):
    desktop = context.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", context)
    found = {"start": time.perf_counter() - begun}

    def load(file):
        url = pathlib.Path(file).as_uri()
        options = (
            prop("Hidden", True),
            prop("FilterName", "Text - txt - csv (StarCalc)"),
            prop("FilterOptions", CSV),
        )
        return desktop.loadComponentFromURL(url, "_blank", 0, options)

    at = time.perf_counter()
    lots = load(lots_file)
    found["load lots"] = time.perf_counter() - at
    at = time.perf_counter()
    movements = load(movements_file)
    found["load movements"] = time.perf_counter() - at

    sheet = lots.Sheets.getByIndex(0)
    cursor = sheet.createCursor()
    cursor.gotoEndOfUsedArea(False)
    last = cursor.RangeAddress.EndRow
    table = sheet.getCellRangeByPosition(0, 0, cursor.RangeAddress.EndColumn, last)
    wanted = TableFilterField()
    wanted.Field = VARIETY_COLUMN
    wanted.Operator = EQUAL
    wanted.IsNumeric = False
    wanted.StringValue = f".*{words}.*"
    at = time.perf_counter()
    described = table.createFilterDescriptor(True)
    described.ContainsHeader = True
    described.UseRegularExpressions = True
    described.setFilterFields((wanted,))
    table.filter(described)
    found["filter"] = time.perf_counter() - at
    shown = table.queryVisibleCells().RangeAddresses
    found["rows"] = sum(area.EndRow - area.StartRow + 1 for area in shown) - 1

    ledger = movements.Sheets.getByIndex(0)
    cell = ledger.getCellByPosition(9, 0)
    at = time.perf_counter()
    cell.Formula = f'=SUMIF(A:A;"{lot_number}";D:D)'
    if cell.FormulaResultType2 != 1:
        raise SystemExit(f"The sum did not come out: {cell.String}")
    found["seeds"] = cell.Value
    found["sum"] = time.perf_counter() - at
    lots.close(True)
    movements.close(True)
    return found


main()
