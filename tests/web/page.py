"""The page in the real browser: first frame, no request after loading, life without its server, links, the person's own file.
usage: page.py FOLDER-OF-THE-PAGE [FOLDER-FOR-PICTURES]        (tests/web/run.sh calls it)"""
import functools
import http.server
import os
import socketserver
import statistics
import sys
import threading
import time

from browser import Browser

PAGE = os.path.abspath(sys.argv[1])
PICTURES = sys.argv[2] if len(sys.argv) > 2 else None
faults = []


def check(good, words):
    if not good:
        faults.append(words)
        print("FAILED:", words)


class Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_):
        pass


class Server(socketserver.ThreadingTCPServer):
    allow_reuse_address = daemon_threads = True


def serve():
    """A plain file server: no header of its own."""
    server = Server(("127.0.0.1", 0), functools.partial(Quiet, directory=PAGE))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    return server, f"http://127.0.0.1:{server.server_address[1]}/"


def first_frame(browser, address, seconds=300):
    began = time.time()
    browser.open(address)
    browser.until("window.pourbookFirstFrame", seconds)
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


def no_request_after_loading(browser):
    time.sleep(1)
    browser.requests()
    for view in words_of_views(browser):
        browser.click(view)
        browser.settled()
        if PICTURES:
            browser.picture(os.path.join(PICTURES, view + ".png"))
    check(not (asked := browser.requests()), f"requests after loading: {asked[:5]}")


def links(browser, address):
    wanted = [f"view={view}&pins=copper,zinc" for view in ("metals", "rank", "curves", "compare", "drop", "mix", "pour", "questions", "trials", "sources")]
    wanted += [f"view={view}&pins=zinc,copper,tin&conditions.at={at}" for view in ("rank", "curves", "compare", "drop") for at in ("77%20K", "20%20degC", "300%20K")]
    wanted += [f"view=compare&pins=copper,zinc&goal={goal}&versus.first=zinc&versus.second=copper" for goal in ("strongest-brake", "light-conductor", "braking-per-cost")]
    wanted += [f"view=curves&pins=copper,zinc&curves.property={p}" for p in ("density", "thermal_conductivity", "specific_heat", "resistivity", "price")]
    for words in wanted:
        first_frame(browser, f"{address}?test&link={len(words)}#{words}")
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


def own_file(browser, address, file):
    """A file is taken in, is still there after a reload, and goes out as the same entries."""
    data = open(file, "rb").read()
    first_frame(browser, address + "?test&own")
    browser.value("importOwn(new File([new Uint8Array(%s)], 'own.sqlite')).then(() => 1)" % list(data))
    check("taken" in browser.value("byId('said').textContent"), "own file: " + browser.value("byId('said').textContent"))
    first_frame(browser, address + "?test&again")
    out = bytes(browser.value("Array.from(Module.FS.readFile(ownFile))"))
    check(out[:16] == data[:16] and len(out) > 100, "own file: lost by a reload")
    return out


def main():
    server, address = serve()
    taken = first_frames(address, 5)
    print(f"first frame, five fresh browsers: {' '.join(f'{t:.2f}' for t in taken)} s, median {statistics.median(taken):.2f} s")
    browser = Browser()
    first_frame(browser, address + "?test")
    print("threads:", browser.value("window.crossOriginIsolated"), " memory:", browser.value("Module.HEAPU8 ? Module.HEAPU8.length >> 20 : HEAPU8.length >> 20"), "MB")
    no_request_after_loading(browser)
    print("links opened:", links(browser, address))
    if own := os.environ.get("POURBOOK_OWN_FILE"):
        with open(own + ".from-page", "wb") as out:
            out.write(own_file(browser, address, own))
    server.shutdown()
    server.server_close()
    took = first_frame(browser, address + "?test&stopped")
    print(f"with the server stopped: first frame after {took:.2f} s")
    check(browser.screen()["items"], "with the server stopped nothing is shown")
    browser.close()
    print("page:", "failed" if faults else "passed", len(faults))
    sys.exit(1 if faults else 0)


main()
