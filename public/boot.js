// Starts the app and its service worker; when that fails, shows what the page itself carries.
// The content security policy forbids inline scripts, so Trunk hands over the file names as attributes.

const page = document.documentElement;
const tag = document.querySelector("script[data-glue]");

// This runs as soon as it is there: the page may still be on its way, and its styles.
const parsed = new Promise((there) => {
  if (document.readyState === "loading") addEventListener("DOMContentLoaded", there, { once: true });
  else there();
});
const styled = parsed.then(() => {
  const styles = document.querySelector("link[rel=stylesheet]");
  if (!styles || styles.sheet || document.readyState === "complete") return undefined;
  // Styles that failed before anybody listened are over with the page: without them the app still has its words.
  return new Promise((there) => [styles, window].forEach((it) => it.addEventListener("load", there, { once: true })));
});

async function fail(why) {
  await parsed;
  if (page.dataset.app === "failed") return;
  page.dataset.app = "failed";
  delete page.dataset.ready;
  document.getElementById("start-state").textContent = "The guide is not running. Use the lines below.";
  const line = document.getElementById("start-why");
  line.textContent = why;
  line.hidden = false;
  scrollTo(0, 0);
}

// A trap in the module leaves the app dead while its last screen still stands there looking alive.
const trapped = (error) => error instanceof WebAssembly.RuntimeError;
addEventListener("error", (event) => trapped(event.error) && fail("It met a fault of its own and stopped."));
addEventListener("unhandledrejection", (event) => trapped(event.reason) && fail("It met a fault of its own and stopped."));

// The log is read while the module is still on its way. The first journal to open takes what this brings and asks for
// the rest itself: where anything here fails it reads the log as if nobody had asked, and says in words what is wrong.
function readAhead() {
  const world = JSON.parse(localStorage.getItem("panward.world"));
  if (!world) return;
  const name = world === "real" ? "panward" : `panward-${world}`;
  const opening = indexedDB.open(name);
  const opened = new Promise((resolve, reject) => {
    opening.onerror = reject;
    // No log stands there, and making one is the journal's.
    opening.onupgradeneeded = () => opening.transaction.abort();
    opening.onsuccess = () => resolve(opening.result);
  });
  const read = (...asks) =>
    opened.then(
      (db) =>
        new Promise((resolve, reject) => {
          const reading = db.transaction(["store", "entries"]);
          const asked = asks.map(([store, ask]) => reading.objectStore(store)[ask]());
          reading.onabort = reject;
          // Answers come in the order of the questions.
          asked.at(-1).onsuccess = () => resolve([db, ...asked.map((request) => request.result)]);
        }),
    );
  opened.then((db) => (db.onversionchange = () => db.close())).catch(() => {});
  // Which log it is and how long is soon known. All of it is read at once where nothing can be shown before, else when
  // it is asked for: it would only stand in the way of what can.
  const sign = read(["store", "getAll"], ["entries", "count"]);
  const all = () => read(["entries", "getAllKeys"], ["entries", "getAll"]);
  const rows = localStorage.getItem("panward.glance") === null ? all() : undefined;
  sign.catch(() => {});
  rows?.catch(() => {});
  globalThis.panwardAhead = { name, sign, rows: () => rows ?? all() };
}

try {
  readAhead();
} catch {
  // As above.
}

async function start() {
  if (typeof WebAssembly !== "object" || !("indexedDB" in window)) {
    fail("This browser is too old for it. Update the browser, or open this address in a newer one.");
    return;
  }
  const wasm = new URL(tag.dataset.wasm, location.href);
  const compiled = WebAssembly.compileStreaming?.(fetch(wasm)).catch(() => undefined);
  const [glue, module] = await Promise.all([import(new URL(tag.dataset.glue, location.href)), compiled, styled]);
  await glue.default({ module_or_path: module ?? wasm });
}

start().catch((error) => {
  console.error(error);
  fail(trapped(error) ? "It met a fault of its own and stopped." : "A part of it could not be fetched. Start again when the network is back.");
});

if ("serviceWorker" in navigator) {
  // Without it the app still runs; only the next start needs the network.
  navigator.serviceWorker.register("sw.js").catch((error) => console.warn("no offline start yet:", error));
}
