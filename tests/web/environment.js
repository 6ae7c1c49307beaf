// The program under node sees the machine's folders, its environment, and in /pourbook what the page brings along.
delete globalThis.fetch; // Emscripten 3.1.6 takes it for a browser's
Module.preRun = [() => {
  Object.assign(ENV, process.env);
  const disk = require("fs");
  const brought = (folder, there) => {
    if (!FS.analyzePath(there).exists) FS.mkdir(there);
    FS.mount(NODEFS, { root: folder }, there);
  };
  for (const entry of disk.readdirSync("/", { withFileTypes: true }))
    if (entry.isDirectory() && !["dev", "proc", "sys"].includes(entry.name)) brought("/" + entry.name, "/" + entry.name);
  if (process.env.POURBOOK_BROUGHT) brought(process.env.POURBOOK_BROUGHT, "/pourbook");
  FS.chdir(process.cwd());
}];
