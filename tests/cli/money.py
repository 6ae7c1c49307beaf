"""Money in the currency the person works in: amounts shown and typed by the workshop's own cited rate, refused without one.
The rates are invented; what one currency is worth in another is checked by the same division done here."""
import os
import tempfile

from support.program import Program, check, ended

FOLDER = tempfile.TemporaryDirectory(prefix=f"pourbook-money-{os.getpid()}-")
own = Program("--workshop", os.path.join(FOLDER.name, "workshop.sqlite"))
run, answer, refused = own.run, own.answer, own.refused
RATE = "1.25 USD/EUR, central bank, 2026-11-02"
SETUP = ["--magnet", "cylinder:12mmx10mm", "--grade", "N42", "--tube", "13mm:17mm:0.5m"]
BUDGET = ["--goal", "longest-fall", *SETUP, "--holding", "budget", "--samples", "50", "--from", "copper-etp,aluminium-1350"]
FALL = [*SETUP, "--metal", "copper-etp", "--samples", "20"]


def told(*words, remark=""):
    """The text of an answer, in one line, its remark checked."""
    code, out, err = run(*words)
    check(code == 0, f"{words}: exit {code}: {err.strip()}")
    check(err == (f"pourbook: {remark}\n" if remark else ""), f"{words}: remark {err!r}")
    return " ".join(out.split())


def has(text, *parts):
    for part in parts:
        check(part in text, f"'{part}' is missing: {text[:400]}")


def figure(x):
    return f"{x:#.3g}".rstrip(".")


# without a rate: dollars, and said why; a currency asked for by name is refused
refused(3, "no rate of exchange for EUR", "drop", *FALL, "--currency", "EUR")
refused(2, "three capital letters", "drop", *FALL, "--currency", "euro")
refused(3, "pourbook rate add EUR", "rank", *BUDGET, "--budget", "20EUR")
refused(3, "pourbook rate add EUR", "sweep", *FALL, "--over", "budget", "5EUR:50EUR")
has(told("drop", *FALL), " USD;")
told("profile", "set", "--currency", "EUR")
WHY = ("prices are shown in USD, not EUR: no rate of exchange for EUR: add one with "
       "`pourbook rate add EUR 1.08 --date 2026-11-25 --source ...`")
has(told("drop", *FALL, remark=WHY), " USD;")

# with one: every amount in euros, the rate beside it; programs read dollars as before
told("rate", "add", "EUR", "1.25", "--date", "2026-11-02", "--source", "central bank", remark=WHY)
cost = answer("drop", *FALL)["tube_metal_cost_usd"]
has(told("drop", *FALL), f"its metal costs {figure(cost / 1.25)} EUR (at {RATE})")
price = answer("value", "copper-etp", "price")
check(price["currency"] == "USD", f"value --json: {price['currency']}")
has(told("value", "copper-etp", "price"), "EUR/kg", f"shown at {RATE}")
has(told("sheet", "copper-etp"), "EUR/kg", f"Money at {RATE}")
has(told("mix", "1kg copper"), "EUR/kg", f"Money at {RATE}")
two = told("drop", *FALL, "--against-metal", "aluminium-1350")
has(two, f"{figure(cost / 1.25)} EUR", f"(at {RATE})")
check("USD" not in two.replace(RATE, ""), "drop of two: dollars are left")

# a budget: 20 EUR are 25 USD
euros, dollars = (answer("rank", *BUDGET, "--budget", budget) for budget in ("20EUR", "25USD"))
check(abs(euros["held"] - 25) < 1e-12 and euros["rate_of_exchange"] == RATE, f"rank --budget 20EUR: {euros['held']}")
check(euros["results"] == dollars["results"], "20 EUR and 25 USD buy other tubes")
text = told("rank", *BUDGET, "--budget", "20EUR")
has(text, "what 20.0 EUR buy of each metal", f"Money at {RATE}")
check("USD" not in text.replace(RATE, ""), "rank --budget: dollars are left")
refused(2, "20EUR or 20USD", "rank", *BUDGET, "--budget", "20")
refused(3, "no rate of exchange for GBP", "rank", *BUDGET, "--budget", "20GBP")

# a sweep over money, its table and its picture
swept = answer("sweep", *FALL, "--over", "budget", "4EUR:40EUR", "--steps", "3")
points = swept["lines"][0]["points"]
check([round(p["x"], 9) for p in (points[0], points[-1])] == [5, 50] and swept["unit"] == "USD", f"sweep: {points[0]['x']} to {points[-1]['x']}")
text = told("sweep", *FALL, "--over", "budget", "4EUR:40EUR", "--steps", "3")
has(text, "4.00 EUR copper", "40.0 EUR copper", "s/EUR", f"Money at {RATE}")
table = told("sweep", *FALL, "--over", "budget", "4EUR:40EUR", "--steps", "3", "--format", "csv")
has(table, "cost of the metal (EUR)", "swept budget (EUR)", RATE)
picture = os.path.join(FOLDER.name, "sweep.svg")
told("chart", "sweep", *FALL[:-2], "--over", "budget", "4EUR:40EUR", "--to", picture)
check(os.path.getsize(picture) > 0, "no picture of the sweep")

# --currency goes before the profile; the sum asked and the sum told are in it
told("rate", "add", "GBP", "1.6", "--date", "2026-11-03", "--source", "newspaper")
has(told("drop", *FALL, "--currency", "GBP"), f"{figure(cost / 1.6)} GBP (at 1.6 USD/GBP, newspaper, 2026-11-03)")
has(told("drop", *FALL, "--currency", "USD"), f"{figure(cost)} USD;")
check(abs(answer("rank", *BUDGET, "--budget", "20GBP", "--currency", "GBP")["held"] - 32) < 1e-12, "20 GBP are 32 USD")

# a goal for the money: the merit is told for the euro
goal = ["rank", "--goal", "braking-per-cost", "--from", "copper-etp", "--samples", "20"]
per_dollar = answer(*goal)["results"][0]["median"]
text = told(*goal)
has(text, "EUR^-1", f"Money at {RATE}")
shown = float(text.split("1 copper-etp ")[1].split()[0])
check(abs(shown / (per_dollar * 1.25) - 1) < 0.01, f"merit for a euro: {shown} beside {per_dollar} for a dollar")
# what can't be used is left out, and only that is called so
told("price", "add", "copper-etp", "900 JPY/kg", "--date", "2026-11-20")
code, out, err = run("value", "copper-etp", "price")
check(code == 0 and err.startswith("pourbook: left out: own price of copper-etp: no rate of exchange for JPY"), f"remark: {err}")
ended("money")
