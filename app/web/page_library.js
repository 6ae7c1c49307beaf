// The browser's side of app/platform/web: linked into the program (emcc --js-library).
"use strict";

mergeInto(LibraryManager.library, {
  $pageText: function(words) {
    const size = lengthBytesUTF8(words) + 1;
    const text = _malloc(size);
    stringToUTF8(words, text, size);
    return text;
  },
  // A copy: a Blob takes no memory that is shared among threads.
  $pageBytes: function(bytes, size) {
    const copy = new Uint8Array(size);
    copy.set(HEAPU8.subarray(bytes, bytes + size));
    return copy;
  },
  page_closed: function() { windowLeft(); },
  page_give_file__deps: ["$pageBytes"],
  page_give_file__proxy: "sync",
  page_give_file__sig: "viii",
  page_give_file: function(name, bytes, size) { bytesToPerson(UTF8ToString(name), pageBytes(bytes, size)); },
  page_address__deps: ["$pageText"],
  page_address: function() { return pageText(location.href.split("#")[0]); },
  // A browser takes a picture only in answer to a click; it says by its console where it refused.
  page_offer_png__deps: ["$pageBytes"],
  page_offer_png: function(bytes, size) {
    if (!navigator.clipboard || typeof ClipboardItem === "undefined") return 0;
    const item = new ClipboardItem({ "image/png": new Blob([pageBytes(bytes, size)], { type: "image/png" }) });
    navigator.clipboard.write([item]).catch(function(why) { console.warn("the picture was not taken: " + why); });
    return 1;
  },
  page_copy_text: function(text) {
    Module.pourbookPasted = UTF8ToString(text);
    if (navigator.clipboard) navigator.clipboard.writeText(Module.pourbookPasted).catch(function() {});
  },
  page_pasted_text__deps: ["$pageText"],
  page_pasted_text: function() { return pageText(Module.pourbookPasted || ""); },
  page_pixel_ratio: function() { return Module.canvas.width / (Module.canvas.clientWidth || Module.canvas.width); },
  page_words__deps: ["$pageText"],
  page_words: function(name) { return pageText(String(Module[UTF8ToString(name)] || "")); },
  page_test_question: function() { return Module.pourbookAsk || 0; },
  page_test_answer: function(line) {
    Module.pourbookAsk = 0;
    Module.pourbookAnswer = UTF8ToString(line);
  },
});
