"""The page in the real browser: first frame, no request after loading, life without its server, links, a phone.
usage: page.py FOLDER-OF-THE-PAGE [FOLDER-FOR-PICTURES]        (tests/web/run.sh calls it)"""
import os
import statistics
import sys
import time

from browser import Browser
from serve import serve

PAGE = os.path.abspath(sys.argv[1])
PICTURES = sys.argv[2] if len(sys.argv) > 2 else None
faults = []


def check(good, words):
    if not good:
        faults.append(words)
        print("FAILED:", words)


def first_frame(browser, address, seconds=300):
    began = time.time()
    browser.open(address)
    browser.until(f"location.href === {address!r} && window.pourbookFirstFrame", seconds)
    return time.time() - began


def first_frames(address, times):
    """A browser of its own each time: nothing kept from before."""
    taken = []
    for _ in range(times):
        browser = Browser()
        taken.append(first_frame(browser, address))
        browser.close()
    return taken


def words_of_views(browser):
    return [item for item in browser.screen()["items"] if item.startswith("view.")]


def no_request_after_loading(browser, server):
    """Every view opened: nothing is asked for, neither of the server nor of the page's own service worker."""
    time.sleep(2)
    browser.requests()
    before = len(server.asked)
    for view in words_of_views(browser):
        browser.click(view)
        browser.settled()
        if PICTURES:
            browser.picture(os.path.join(PICTURES, view + ".png"))
    check(not (asked := browser.requests()), f"requests after loading: {asked[:5]}")
    check(len(server.asked) == before, f"the server was asked for {server.asked[before:]}")


def on_a_phone(browser, address):
    browser.call("Emulation.setDeviceMetricsOverride", width=390, height=844, deviceScaleFactor=3, mobile=True)
    browser.call("Emulation.setTouchEmulationEnabled", enabled=True)
    for view in ("start", "metals", "rank", "drop", "pour"):
        first_frame(browser, f"{address}?test&phone={view}#view={view}")
        items = browser.settled()["items"]
        check(items["view"]["text"] == view, f"a phone does not open {view}")
        check("views" in items and items["views"]["height"] >= 3 * 32, f"{view}: the list of views is lower than a finger needs")
        if PICTURES:
            browser.picture(os.path.join(PICTURES, f"phone-{view}.png"))
    browser.call("Emulation.setTouchEmulationEnabled", enabled=False)
    browser.call("Emulation.setDeviceMetricsOverride", width=1280, height=800, deviceScaleFactor=1, mobile=False)


def links(browser, address):
    wanted = [f"view={view}&pins=copper,zinc" for view in ("metals", "rank", "curves", "compare", "drop", "mix", "pour", "questions", "trials", "sources")]
    wanted += [f"view={view}&pins=zinc,copper,tin&conditions.at={at}" for view in ("rank", "curves", "compare", "drop") for at in ("77%20K", "20%20degC", "300%20K")]
    wanted += [f"view=compare&pins=copper,zinc&goal={goal}&versus.first=zinc&versus.second=copper" for goal in ("strongest-brake", "light-conductor", "braking-per-cost")]
    wanted += [f"view=curves&pins=copper,zinc&curves.property={p}" for p in ("density", "thermal_conductivity", "specific_heat", "resistivity", "price")]
    for number, words in enumerate(wanted):
        first_frame(browser, f"{address}?test&link={number}#{words}")
        items = browser.settled()["items"]
        view = words.split("&")[0].removeprefix("view=")
        check(items["view"]["text"] == view, f"link {words}: view {items['view']['text']}")
        check("link.fault" not in items, f"link {words}: {items.get('link.fault')}")
        for pin in ("copper", "zinc"):
            check(any(i.startswith("pin.") and pin in i for i in items), f"link {words}: {pin} is not pinned")
    first_frame(browser, f"{address}?test&damaged#colour=red")
    items = browser.settled()["items"]
    check(items.get("link.fault", {}).get("text", "").startswith("the link can't be read"), "a damaged link says nothing")
    check(items["view"]["text"] == "start", "a damaged link does not open the first view")
    return len(wanted)


def main():
    server, address = serve(PAGE)
    taken = first_frames(address, 5)
    print(f"first frame, five fresh browsers: {' '.join(f'{t:.2f}' for t in taken)} s, median {statistics.median(taken):.2f} s")
    browser = Browser()
    first_frame(browser, address + "?test")
    print("threads:", browser.value("window.crossOriginIsolated"), " memory:", browser.value("Module.HEAPU8 ? Module.HEAPU8.length >> 20 : HEAPU8.length >> 20"), "MB")
    no_request_after_loading(browser, server)
    print("links opened:", links(browser, address), flush=True)
    on_a_phone(browser, address)
    server.shutdown()
    server.server_close()
    took = first_frame(browser, address + "?test&stopped")
    print(f"with the server stopped: first frame after {took:.2f} s")
    check(browser.screen()["items"], "with the server stopped nothing is shown")
    browser.close()
    print("page:", "failed" if faults else "passed", len(faults))
    sys.exit(1 if faults else 0)


main()
