// What was typed is kept twice: at once in localStorage, and in IndexedDB, which is on the disk when it says so.
// Photos are kept in IndexedDB only. Nothing leaves the phone.
const KEEP = `inspector sheet ${DATA.id}`;
const STORE = "kept";
let database = null;
let keeps = false;

function emptyState() {
  return { turn: 0, begun: false, view: "start", head: { date: localDay() }, works: Object.fromEntries(DATA.done.map((one) => [one, true])), without: {}, answers: {},
    units: {}, tools: {}, last: null, again: null, left: 0 };
}
let state = emptyState();
const photos = new Map();

function openDatabase() {
  return new Promise((resolve) => {
    let request;
    try { request = indexedDB.open(KEEP, 1); } catch { resolve(null); return; }
    request.onupgradeneeded = () => request.result.createObjectStore(STORE);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => resolve(null);
    request.onblocked = () => resolve(null);
  });
}

// Put, delete or read; resolves when it is on the disk, rejects when it is not.
function store(mode, act) {
  return new Promise((resolve, reject) => {
    if (!database) { reject(new Error("no database")); return; }
    const change = database.transaction(STORE, mode, { durability: "strict" });
    const request = act(change.objectStore(STORE));
    change.oncomplete = () => resolve(request.result);
    change.onabort = change.onerror = () => reject(change.error || new Error("not kept"));
  });
}

function parsed(text) {
  try {
    const found = JSON.parse(text);
    return found && typeof found.turn === "number" && found.answers ? found : null;
  } catch { return null; }
}

async function loadKept() {
  let quick = null;
  try {
    localStorage.setItem(`${KEEP} try`, "1");
    keeps = localStorage.getItem(`${KEEP} try`) === "1";
    localStorage.removeItem(`${KEEP} try`);
    quick = parsed(localStorage.getItem(KEEP));
  } catch { keeps = false; }
  database = await openDatabase();
  let sure = null;
  if (database) {
    keeps = true;
    try {
      sure = parsed(await store("readonly", (kept) => kept.get("state")));
      const names = await store("readonly", (kept) => kept.getAllKeys());
      for (const name of names) {
        if (typeof name === "string" && name.startsWith("photo ")) {
          photos.set(name.slice(6), new Blob([await store("readonly", (kept) => kept.get(name))], { type: "image/jpeg" }));
        }
      }
    } catch { /* an unreadable store is as good as none; what was kept at once is used */ }
  }
  const best = [quick, sure].filter(Boolean).sort((one, other) => other.turn - one.turn)[0];
  if (best) state = { ...emptyState(), ...best };
  if (navigator.storage && navigator.storage.persist) navigator.storage.persist().catch(() => false);
  return Boolean(best);
}

let writing = Promise.resolve();
function keep() {
  state.turn += 1;
  state.begun = true;
  const text = JSON.stringify(state);
  let atOnce = false;
  try { localStorage.setItem(KEEP, text); atOnce = true; } catch { /* full or forbidden: the database is left */ }
  writing = writing.then(() => store("readwrite", (kept) => kept.put(text, "state")))
    .then(() => { keeps = true; }, () => { keeps = atOnce; })
    .then(showKept);
  return writing;
}

async function keepPhoto(name, blob) {
  await store("readwrite", (kept) => kept.put(blob, `photo ${name}`));
}

async function forget() {
  const names = [...photos.keys()];
  photos.clear();
  state = emptyState();
  try { localStorage.removeItem(KEEP); } catch { /* nothing was kept there */ }
  try {
    await writing;
    await store("readwrite", (kept) => kept.delete("state"));
    for (const name of names) await store("readwrite", (kept) => kept.delete(`photo ${name}`));
  } catch { /* there was no database */ }
}
