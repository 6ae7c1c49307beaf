// What the page does around the program: the person's own file in the browser's store, links, files in and out, touch.
"use strict";

const own = "/own", ownFile = own + "/workshop.sqlite";
const byId = (id) => document.getElementById(id);
const say = (words) => { byId("said").textContent = words; };

// A page whose answers carry two headers may have threads (HTML, "cross-origin isolated"). Plain file servers do not send
// them; the service worker, which also keeps the page for use without a network, adds them. It takes effect with one reload.
async function settle() {
  if (!("serviceWorker" in navigator)) return;
  try {
    await navigator.serviceWorker.register("service_worker.js");
    await navigator.serviceWorker.ready;
  } catch (why) {
    return; // a page without https, which start() says
  }
  if (window.crossOriginIsolated || sessionStorage.getItem("reloaded")) return;
  sessionStorage.setItem("reloaded", "yes");
  location.reload();
  await new Promise(() => {});
}

// One page at a time keeps what is entered; a second would write over it.
async function takeStore() {
  if (!navigator.locks) return true;
  return new Promise((taken) => {
    navigator.locks.request("pourbook-own-file", { ifAvailable: true }, (lock) => {
      taken(lock !== null);
      return lock ? new Promise(() => {}) : undefined;
    });
  });
}

let keeps = false, keeping = false;
// All that has changed in /own goes into the store in one transaction: whenever the tab ends, all of it is there or none.
function keep() {
  if (!keeps || keeping) return Promise.resolve();
  keeping = true;
  return new Promise((done) => Module.FS.syncfs(false, (why) => {
    keeping = false;
    if (why) say("what you entered could not be kept: " + why);
    done();
  }));
}

function bytesToPerson(name, bytes) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([bytes]));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
}

function exportOwn() {
  if (!Module.FS.analyzePath(ownFile).exists) return say("nothing has been entered yet");
  bytesToPerson("workshop.sqlite", Module.FS.readFile(ownFile));
}

async function importOwn(file) {
  const there = "/opened/" + "import.sqlite";
  Module.FS.writeFile(there, new Uint8Array(await file.arrayBuffer()));
  say(Module.ccall("pourbook_restore", "string", ["string"], [there]));
  Module.FS.unlink(there);
  await keep();
}

async function openPart(file) {
  const there = "/opened/" + file.name.replace(/[^A-Za-z0-9._-]/g, "_");
  Module.FS.writeFile(there, new Uint8Array(await file.arrayBuffer()));
  const words = "stl:" + there;
  Module.pourbookPasted = words;
  say("the part is here as " + words + ": paste it (Ctrl+V) as a part in Pour");
}

function pickedBy(id, take) {
  byId(id).addEventListener("change", (event) => {
    const file = event.target.files[0];
    event.target.value = "";
    if (file) take(file).catch((why) => say(String(why)));
  });
}

// The canvas has the display's own pixels.
function sizeOfCanvas() {
  const box = byId("canvas").getBoundingClientRect(), pixels = window.devicePixelRatio || 1;
  return [Math.max(1, Math.round(box.width * pixels)), Math.max(1, Math.round(box.height * pixels))];
}

// On a phone the buttons for files stand in About, so that the header is one line.
function placeFiles(phone) {
  const files = byId("files"), about = byId("about");
  if (phone) about.querySelector("div").prepend(files); else about.before(files);
}

// The window library would take a touch for a mouse with no button. The browser itself makes a tap a move and a click
// (hover first) and two fingers a zoom; one finger drawn over the page scrolls in the window, or the page if it is zoomed.
function followTouch() {
  const canvas = byId("canvas"), points = 90; // a notch
  const zoomed = () => window.visualViewport && window.visualViewport.scale > 1.05;
  let last = null;
  const handlers = {
    touchstart(touch) {
      canvas.dispatchEvent(new MouseEvent("mousemove", { clientX: touch.clientX, clientY: touch.clientY }));
    },
    touchmove(touch) {
      if (last && !zoomed()) Module.ccall("pourbook_wheel", null, ["number", "number"], [(touch.clientX - last.clientX) / points, (touch.clientY - last.clientY) / points]);
    },
    touchend() {},
    touchcancel() {},
  };
  for (const [kind, take] of Object.entries(handlers))
    window.addEventListener(kind, (event) => {
      if (event.target !== canvas) return;
      event.stopImmediatePropagation();
      const one = event.touches.length === 1 ? event.touches[0] : null;
      if (one && Module.calledRun) take(one);
      last = one;
    }, true);
  if (!window.visualViewport) return;
  window.visualViewport.addEventListener("resize", () => { canvas.style.touchAction = zoomed() ? "pan-x pan-y pinch-zoom" : "pinch-zoom"; });
}

// Keys the window answers to and the browser would take for itself; F12 and Ctrl+R, W, T, V stay the browser's.
function isOurs(event) {
  if (/^F([1-9]|1[01])$/.test(event.key)) return true;
  return (event.ctrlKey || event.metaKey) && "aefklsz0+-=c".includes(event.key.toLowerCase());
}
window.addEventListener("keydown", (event) => { if (isOurs(event) && event.target.type !== "file") event.preventDefault(); }, true);

// A notch of the wheel is 100 to 120 units of one kind or 3 lines of another (UI Events, WheelEvent); the window library
// passes them on as notches.
window.addEventListener("wheel", (event) => {
  if (event.target !== byId("canvas") || event.ctrlKey) return; // with Ctrl it zooms the page
  event.stopImmediatePropagation();
  event.preventDefault();
  const notches = (units) => -units / (event.deltaMode === 0 ? 100 : event.deltaMode === 1 ? 3 : 1);
  Module.ccall("pourbook_wheel", null, ["number", "number"], [notches(event.deltaX), notches(event.deltaY)]);
}, { capture: true, passive: false });
// The older name of the same event, which some browsers send beside it.
window.addEventListener("mousewheel", (event) => { if (event.target === byId("canvas")) event.stopImmediatePropagation(); }, true);

// The keyboard of a phone opens for a field of the page only: an unseen one stands in for the field in the window.
function followTyping() {
  const typing = byId("typing");
  byId("canvas").addEventListener("click", (event) => {
    if (!matchMedia("(pointer: coarse)").matches) return;
    typing.style.top = event.clientY + "px"; // the browser brings it into sight above its keyboard
    setTimeout(() => { if (Module.ccall("pourbook_wants_text", "number", [], [])) typing.focus(); else typing.blur(); }, 80);
  });
  const space = " "; // so that there is something to delete
  typing.value = space;
  typing.addEventListener("input", (event) => {
    if (event.inputType === "deleteContentBackward") pressed(8);
    else if (event.data) Module.ccall("pourbook_typed", null, ["string"], [event.data]);
    typing.value = space;
  });
}

// A key for the window, held for longer than a frame.
function pressed(keyCode) {
  window.dispatchEvent(new KeyboardEvent("keydown", { keyCode }));
  setTimeout(() => window.dispatchEvent(new KeyboardEvent("keyup", { keyCode })), 50);
}

window.addEventListener("paste", (event) => { Module.pourbookPasted = event.clipboardData.getData("text"); });
window.addEventListener("hashchange", () => location.reload());
document.addEventListener("visibilitychange", () => { if (document.visibilityState === "hidden") keep(); });

function hasWebGL2() {
  try {
    return !!document.createElement("canvas").getContext("webgl2");
  } catch (why) {
    return false;
  }
}

function ready() {
  byId("waiting").hidden = true;
  window.pourbookFirstFrame = performance.now();
  byId("canvas").focus();
  setInterval(keep, 2000);
}

function over(words) {
  byId("waiting").hidden = false;
  byId("waiting-words").textContent = words;
}

function windowLeft() {
  keep().then(() => over("closed: reload the page to open it again"));
}

var Module = {
  canvas: byId("canvas"),
  noExitRuntime: true,
  setStatus: (words) => { if (words) byId("waiting-words").textContent = words.replace("...", " …"); },
  printErr: (words) => { console.warn(words); say(words); },
  onAbort: () => over("the program has stopped: reload the page"),
  preRun: [function() {
    Module.FS = FS;
    FS.mkdir(own);
    FS.mkdir("/opened");
    FS.mount(IDBFS, {}, own);
    addRunDependency("own file");
    FS.syncfs(true, (why) => {
      if (why) say("what you entered before can't be read: " + why);
      removeRunDependency("own file");
    });
  }],
  postRun: [function() { requestAnimationFrame(() => requestAnimationFrame(ready)); }],
};

(async function start() {
  if (!hasWebGL2() || typeof WebAssembly === "undefined") {
    byId("waiting").hidden = true;
    byId("without").hidden = false;
    return;
  }
  await settle();
  keeps = await takeStore();
  if (!keeps) say("Pourbook is open in another tab: what you enter in this one is not kept");
  [Module.pourbookWidth, Module.pourbookHeight] = sizeOfCanvas();
  Module.pourbookLink = location.hash.slice(1);
  Module.pourbookTest = new URLSearchParams(location.search).has("test") ? "page" : "";
  new ResizeObserver(() => { if (Module.calledRun) Module.ccall("pourbook_resize", null, ["number", "number"], sizeOfCanvas()); })
    .observe(byId("canvas"));
  byId("export").addEventListener("click", exportOwn);
  pickedBy("import", importOwn);
  pickedBy("part", openPart);
  const phone = matchMedia("(max-width: 640px)");
  placeFiles(phone.matches);
  phone.addEventListener("change", () => placeFiles(phone.matches));
  followTyping();
  followTouch();
  if (!window.crossOriginIsolated) return over("this address gives the page no threads: open it by https, or from this machine itself, and not in a private window");
  const program = document.createElement("script");
  program.src = "pourbook.js";
  document.body.append(program);
})();
