"""What programs read is what the documents promise: JSON and SARIF of every bad sample and of the example book.

check.py PROGRAM SOURCE_FOLDER
"""
import csv
import datetime
import decimal
import fractions
import io
import json
import pathlib
import re
import subprocess
import sys
import tempfile
import urllib.parse
import zoneinfo

try:
    import icalendar
    import jsonschema
except ImportError:
    sys.exit("This test wants Debian's python3-jsonschema and python3-icalendar; `bash tests/tools/setup.sh test` installs them.")

program, root = sys.argv[1], pathlib.Path(sys.argv[2])
here = pathlib.Path(__file__).parent
faults, counts = [], {"problems": 0, "results": 0, "cards": 0, "ratios": 0, "fixes": 0, "others": 0, "mended": 0, "hours": 0, "purchases": 0, "costs": 0, "versions": 0, "plans": 0}


def validator(name):
    schema = json.loads((here / name).read_text())
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


problem_schema, card_schema, ratios_schema, sarif_schema = (
    validator(n + ".schema.json") for n in ("problem", "card", "ratios", "sarif"))


def validate(schema, value, where):
    for error in schema.iter_errors(value):
        faults.append(f"{where}: {error.json_path}: {error.message[:200]}")


def run(arguments, folder):
    done = subprocess.run([program, *arguments], cwd=folder, capture_output=True, timeout=60)
    return done.stdout.decode("utf-8"), done.returncode  # not UTF-8: the test ends here


def line_and_column(text, offset):
    before = text[:offset].decode("utf-8", "replace")
    return before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1


def check_place(place, folder, where):
    """Lines and columns say the same place as the bytes do."""
    if place.get("line") is None:
        return
    text = (folder / place["file"]).read_bytes() if "file" in place else None
    if text is None:
        return
    if not place["begin"] <= place["end"] <= len(text):
        faults.append(f"{where}: bytes {place['begin']} to {place['end']} of {len(text)}")
    if (place["line"], place["column"]) != line_and_column(text, place["begin"]):
        faults.append(f"{where}: {place['line']}:{place['column']} is not byte {place['begin']}")


def check_json(paths, folder, where):
    out, code = run(["check", "--as", "json", *paths], folder)
    found = []
    for line in out.splitlines():
        problem = json.loads(line)
        validate(problem_schema, problem, where)
        check_place(problem, folder, where)
        for other in problem["others"]:
            check_place(other, folder, where)
        for fix in problem["fixes"]:
            check_place({**fix, "file": problem["file"]}, folder, where)
        counts["others"] += len(problem["others"])
        counts["fixes"] += len(problem["fixes"])
        found.append((problem["code"], problem["severity"], problem["file"], problem["line"]))
    counts["problems"] += len(found)
    if (code == 1) != any(one[1] == "error" for one in found):
        faults.append(f"{where}: exit {code} with {found}")
    return found


def check_safe_fixes(paths, folder, where):
    """A safe fix, applied as the line says, mends what it is said of."""
    problems = [json.loads(line) for line in run(["check", "--as", "json", *paths], folder)[0].splitlines()]
    for problem in problems:
        for fix in problem["fixes"]:
            if fix["certainty"] != "safe":
                continue
            file = folder / problem["file"]
            text = file.read_bytes()
            file.write_bytes(text[: fix["begin"]] + fix["text"].encode() + text[fix["end"] :])
            left = [json.loads(line)["code"] for line in run(["check", "--as", "json", *paths], folder)[0].splitlines()]
            file.write_bytes(text)
            counts["mended"] += 1
            if left.count(problem["code"]) >= [one["code"] for one in problems].count(problem["code"]):
                faults.append(f"{where}: the fix `{fix['title']}` leaves {problem['code']}")


def members(schema):
    """Every name of a member in a schema."""
    out = set()
    if isinstance(schema, dict):
        out |= set(schema.get("properties", {}))
        for value in schema.values():
            out |= members(value)
    elif isinstance(schema, list):
        for value in schema:
            out |= members(value)
    return out


def check_sarif(paths, folder, where):
    out, _ = run(["check", "--as", "sarif", *paths], folder)
    log = json.loads(out)
    validate(sarif_schema, log, where)
    found = []
    for one in log["runs"]:
        rules = [rule["id"] for rule in one["tool"]["driver"]["rules"]]
        if len(set(rules)) != len(rules):
            faults.append(f"{where}: a rule stands twice")
        for result in one["results"]:
            if rules[result["ruleIndex"]] != result["ruleId"]:
                faults.append(f"{where}: ruleIndex {result['ruleIndex']} is not {result['ruleId']}")
            place = result["locations"][0]["physicalLocation"]
            uri = urllib.parse.unquote(place["artifactLocation"]["uri"])
            found.append((result["ruleId"], result["level"], uri, place["region"]["startLine"]))
            ids = [other["id"] for other in result.get("relatedLocations", [])]
            if len(set(ids)) != len(ids):
                faults.append(f"{where}: an id of a location stands twice")
    counts["results"] += len(found)
    return found


def check_cards(arguments, folder, where, wanted=None):
    out, code = run(["card", "--as", "json", *arguments], folder)
    decoder, at, cards = json.JSONDecoder(), 0, 0
    while at < len(out):
        card, at = decoder.raw_decode(out, at)
        validate(card_schema, card, where)
        cards += 1
        while at < len(out) and out[at].isspace():
            at += 1
    counts["cards"] += cards
    if wanted is not None and (cards != wanted or code != 0):
        faults.append(f"{where}: {cards} cards of {wanted}, exit {code}")


def check_ratios(arguments, folder, where):
    out, code = run(["ratios", "--as", "json", *arguments], folder)
    decoder, at, tables = json.JSONDecoder(), 0, 0
    while at < len(out):
        ledger, at = decoder.raw_decode(out, at)
        validate(ratios_schema, ledger, where)
        tables += len(ledger["tables"])
        while at < len(out) and out[at].isspace():
            at += 1
    counts["ratios"] += tables
    if code == 0 and tables == 0:
        faults.append(f"{where}: no table of ratios")


def check_day(path, folder, where):
    """A run sheet as JSON against its schema, and as a calendar read back by a library of its own: the same hours."""
    asked = ["day", path, "--past"]
    if "menus" not in path:
        asked += ["--serve", "2026-12-05 18:30"]
    for zone in (None, "Europe/London"):
        call = asked + (["--zone", zone] if zone else [])
        out, code = run([*call, "--as", "json"], folder)
        if code != 0:
            faults.append(f"{where}: exit {code}")
            return
        sheet = json.loads(out)
        validate(card_schema, sheet, where)
        hours = [hour for part in sheet["parts"] for hour in part["hours"]]
        if [hour["from"] for hour in hours] != sorted(hour["from"] for hour in hours):
            faults.append(f"{where}: hours out of order")
        calendar, code = run([*call, "--as", "ical"], folder)
        if any(len(line.encode()) > 75 for line in calendar.split("\r\n")):
            faults.append(f"{where}: a line of the calendar is longer than 75 octets")
        events = [part for part in icalendar.Calendar.from_ical(calendar).walk() if part.name == "VEVENT"]
        if len(events) != len(hours) or len({event["UID"] for event in events}) != len(events):
            faults.append(f"{where}: {len(events)} events of {len(hours)} hours, or one UID twice")
        for event, hour in zip(events, hours):
            start = event["DTSTART"].dt
            end = event["DTEND"].dt if "DTEND" in event else start
            if "DTEND" in event and end <= start:
                faults.append(f"{where}: an end that is not later than its beginning")
            wanted = ("fromUtc", "untilUtc") if zone else ("from", "until")
            written = tuple(moment.strftime("%Y-%m-%dT%H:%M") + ("Z" if zone else "") for moment in (start, end))
            if written != tuple(hour[name] for name in wanted) or (start.tzinfo is None) == bool(zone):
                faults.append(f"{where}: {written} in the calendar, {hour['from']} on the sheet")
            if zone:
                local = start.astimezone(zoneinfo.ZoneInfo(zone)).strftime("%Y-%m-%dT%H:%M")
                if local != hour["from"]:
                    faults.append(f"{where}: {local} by the library's zone, {hour['from']} by ours")
            if hour["text"] not in str(event["SUMMARY"]) or len(event.subcomponents) != 1:
                faults.append(f"{where}: an event without its words or its alarm")
        counts["hours"] += len(hours)


def money(text):
    """The number of a sum as printed, without its sign; none where there is no number."""
    found = re.search(r"\d+(?:\.\d+)?", text)
    return decimal.Decimal(found.group()) if found else None


def check_table_sums(table, column, where):
    """A last row that says it is a sum is one, to half of the last digit a line."""
    if not table.get("total"):
        return
    at = table["columns"].index(column)
    *lines, total = [money(row[at]) for row in table["rows"]]
    if abs(sum(line for line in lines if line is not None) - total) > decimal.Decimal("0.005") * (len(lines) + 1):
        faults.append(f"{where}: {total} is not the sum of {lines}")


def check_order(paths, folder, where):
    """An order as JSON against its schema; its columns read back by Python's csv are its records, and its sums agree."""
    out, code = run(["order", "--as", "json", *paths], folder)
    text, csv_code = run(["order", "--as", "csv", *paths], folder)
    if code != 0 or csv_code != 0:
        faults.append(f"{where}: order: exit {code} and {csv_code}")
        return
    order = json.loads(out)
    validate(card_schema, order, where)
    rows = list(csv.DictReader(io.StringIO(text, newline="")))
    records = [{**one, "for": "; ".join(f"{share['dish']}: {share['amount']}" for share in one["for"])} for one in order["records"]]
    if rows != records:
        faults.append(f"{where}: the columns and the records of the order differ")
    if any(len(line.split("\n")) > 1 for line in text.split("\r\n")):
        faults.append(f"{where}: a line of the columns does not end in CR LF")
    shown = [row for part in order["parts"] for table in part["tables"] for row in table["rows"][: -1 if table.get("total") else None]]
    if not {row["item"] for row in rows} <= {row[0] for row in shown}:
        faults.append(f"{where}: something in the columns stands in no table")
    for part in order["parts"]:
        for table in part["tables"]:
            check_table_sums(table, "Cost", f"{where}: {part['title']}")
    costs = [decimal.Decimal(row["cost"]) for row in rows if row["cost"]]
    paid = [fact["text"] for fact in order["facts"] if fact["kind"] == "cost"]
    if costs and abs(money(paid[0]) - sum(costs)) > decimal.Decimal("0.005") * (len(costs) + 1):
        faults.append(f"{where}: to pay {paid[0]}, together {sum(costs)}")
    counts["purchases"] += len(rows)


def check_versions(table, head, where):
    """The first row is the recipe as written; each difference is that of the sums beside it."""
    cost, difference = table["columns"].index("Cost"), table["columns"].index("Difference")
    first, *others = table["rows"]
    if money(first[cost]) != money(head) or not others:
        faults.append(f"{where}: {first} does not begin a table of versions")
    for row in others:
        sign = -1 if row[difference].startswith("\u2212") else 1
        if row[difference] != "?" and money(first[cost]) + sign * money(row[difference]) != money(row[cost]):
            faults.append(f"{where}: {row} against {first}")
        counts["versions"] += 1


def check_cost(path, folder, where):
    """A costing as JSON against its schema; the exact costs of its records come to the cost of its head."""
    out, code = run(["cost", "--as", "json", "--today", "2026-03-01", path], folder)
    if code != 0:
        faults.append(f"{where}: cost: exit {code}")
        return
    costing = json.loads(out)
    validate(card_schema, costing, where)
    whole = sum(fractions.Fraction(one["exact"]) for one in costing["records"] if one["exact"])
    head = next(fact["text"] for fact in costing["facts"] if fact["kind"] == "cost")
    if abs(fractions.Fraction(money(head)) - whole) > fractions.Fraction(1, 200):
        faults.append(f"{where}: {head} in the head, {float(whole)} together")
    shares = [decimal.Decimal(one["share"]) for one in costing["records"] if one["share"]]
    if shares and abs(sum(shares) - 100) > decimal.Decimal("0.05") * len(shares):
        faults.append(f"{where}: shares come to {sum(shares)} %")
    for part in costing["parts"]:
        for table in part.get("tables", []):
            check_table_sums(table, "Cost", f"{where}: {part['title']}")
            if part["title"] == "Versions":
                check_versions(table, head, where)
    counts["costs"] += len(costing["records"])


def check_entries(path, folder):
    """Two plans of one serving, one with a step pinned and the first one kept to, are the same entries of a calendar, the later one ahead."""
    call = ["day", path, "--past"]
    sheet, _ = run([*call, "--as", "json"], folder)
    earlier = pathlib.Path(folder) / "earlier.json"
    earlier.write_text(sheet)

    if run([*call, "--as", "ical"], folder) != run([*call, "--as", "ical"], folder):
        faults.append(f"{path}: two calendars of one plan")

    def entries(*options):
        calendar, code = run([*call, *options, "--as", "ical"], folder)
        return {str(event["UID"]): event for event in icalendar.Calendar.from_ical(calendar).walk("VEVENT")} if code == 0 else {}

    first, moved = entries(), 0
    for hour in (hour for part in json.loads(sheet)["parts"] for hour in part["hours"] if hour["kind"] == "hands"):
        at = datetime.datetime.fromisoformat(hour["from"]) - datetime.timedelta(minutes=20)
        second = entries("--keep", str(earlier), "--pin", f"{hour['name']}: {hour['text']} = {at:%Y-%m-%d %H:%M}")
        if not second:
            continue  # that step cannot begin then
        moved += any(first[uid]["DTSTART"].dt != second[uid]["DTSTART"].dt for uid in first if uid in second)
        if set(first) != set(second):
            faults.append(f"{path}: other entries when `{hour['text']}` is pinned: {sorted(set(first) ^ set(second))}")
        if {event["SEQUENCE"] for event in first.values()} != {0} or {event["SEQUENCE"] for event in second.values()} != {1}:
            faults.append(f"{path}: the later plan has no higher sequence")
        if moved >= 2:
            break
    if moved == 0:
        faults.append(f"{path}: no plan with a pinned step moved anything")
    # Served an hour later it is another serving, with entries of its own.
    later = entries("--serve", "2026-12-06 19:00")
    if not later or set(first) & set(later):
        faults.append(f"{path}: another serving has the same entries")
    counts["plans"] += moved + 2


def bad_samples(page):
    """The books of the bad samples of a page: a list of {file name: text}."""
    books, inside = [], None
    for line in page.splitlines():
        if line.startswith("```"):
            info = line[3:].split()
            if inside is None and info[:1] == ["qtn"]:
                name = next((word[5:] for word in info if word.startswith("file=")), "sample.qtn")
                if "bad" in info or "good" in info or not books:
                    books.append(("bad" in info, {}))
                inside = name
                books[-1][1][name] = ""
            else:
                inside = None if inside is not None or len(line) == 3 else ""
        elif inside:
            books[-1][1][inside] += line + "\n"
    return [files for bad, files in books if bad]


def main():
    codes = set()
    for page in sorted((root / "docs").rglob("*.md")):
        for book in bad_samples(page.read_text()):
            with tempfile.TemporaryDirectory() as folder:
                folder = pathlib.Path(folder)
                for name, text in book.items():
                    (folder / name).parent.mkdir(parents=True, exist_ok=True)
                    (folder / name).write_text(text)
                found = check_json(sorted(book), folder, page.name)
                if found != check_sarif(sorted(book), folder, page.name):
                    faults.append(f"{page.name}: JSON and SARIF differ")
                check_safe_fixes(sorted(book), folder, page.name)
                codes |= {one[0] for one in found}
    told = (root / "docs/commands.md").read_text()
    for name in sorted(members(problem_schema.schema) | members(card_schema.schema) | members(ratios_schema.schema)):
        if f"`{name}`" not in told:
            faults.append(f"docs/commands.md does not tell of the member {name}")
    examples = sorted(path.relative_to(root / "examples") for path in (root / "examples").rglob("*.qtn"))
    if check_json(["."], root / "examples", "examples") or check_sarif(["."], root / "examples", "examples"):
        faults.append("the example book is not without a fault")
    recipes = [str(path) for path in examples if path.name != "kitchen.qtn"]
    menus = [(root / "examples" / path).read_text() for path in recipes if path.startswith("menus/")]
    wanted = len(recipes) + sum(text.split("take:")[1].count("[") for text in menus)  # a menu prints a card for each dish
    check_cards(recipes, root / "examples", "examples", wanted)
    for options in (["--times", "7/3", "--beside", "american"], ["--units", "imperial", "--beside", "metric"], ["--units", "american", "--times", "1/2"]):
        check_cards([*options, *recipes], root / "examples", "examples " + " ".join(options), wanted)
    for path in recipes:
        check_day(path, root / "examples", path)
        check_order([path], root / "examples", path)
        check_cost(path, root / "examples", path)
    check_order(recipes, root / "examples", "all examples")
    with tempfile.TemporaryDirectory() as folder:
        for path in sorted((root / "examples/menus").glob("*.qtn")):
            check_entries(path.resolve(), folder)
    check_ratios(["."], root / "examples", "examples")
    for path in sorted((root / "tests/golden").rglob("*.qtn")):
        check_ratios([path.name, "--times", "2"], path.parent, str(path.relative_to(root)))
        check_cards([path.name], path.parent, str(path.relative_to(root)))
    for name, least in {"problems": 130, "results": 130, "cards": 100, "ratios": 50, "fixes": 30, "others": 30, "mended": 10, "hours": 500, "purchases": 300, "costs": 150, "versions": 5, "plans": 8}.items():
        if counts[name] < least:
            faults.append(f"only {counts[name]} {name} were seen, not {least}")
    if len(codes) < 120:
        faults.append(f"only {len(codes)} codes were seen")
    print(counts, len(codes), "codes")
    for fault in faults:
        print(fault)
    sys.exit(1 if faults else 0)


main()
