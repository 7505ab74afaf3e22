// The record as a file, what is left open, and an empty page for the next machine.
const fileName = () => `record_${((headReading("date") || {}).value || localDay()).replace(/[^0-9-]/g, "")}.zip`;

// The files of the record; [name, bytes]. A photo is taken along when the record names it.
async function recordFiles(folder, suffix) {
  const { record } = makeRecord(folder);
  const text = JSON.stringify(record, null, 1);
  const files = [[`record${suffix}`, new TextEncoder().encode(text)]];
  for (const [key, blob] of photos) {
    const name = folder + photoName(key);
    if (text.includes(`"${name}"`)) files.push([name, new Uint8Array(await blob.arrayBuffer())]);
  }
  return files;
}

async function saveRecord(told) {
  const address = URL.createObjectURL(zip(await recordFiles("photos/", ".json")));
  const link = make("a", { href: address, download: fileName() });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60000);
  told.textContent = fill(W.saved, { file: fileName() });
}

// What the phone can hand to a mail or a message: the zip, or where it takes none (most take no zip) a text and pictures.
async function toShare() {
  if (!navigator.canShare) return null;
  const packed = [new File([zip(await recordFiles("photos/", ".json"))], fileName(), { type: "application/zip" })];
  if (navigator.canShare({ files: packed })) return packed;
  const single = (await recordFiles("", ".txt")).map(([name, bytes]) =>
    new File([bytes], name, { type: name.endsWith(".txt") ? "text/plain" : "image/jpeg" }));
  return navigator.canShare({ files: single }) ? single : null;
}

function shareButton(told) {
  const button = make("button", { type: "button", id: "share", hidden: true }, W.share);
  toShare().then((files) => {
    if (!files) return;
    button.hidden = false;
    // the files are ready before the tap: a phone shares only at once after it
    button.addEventListener("click", () => navigator.share({ files }).then(
      () => { told.textContent = W.shared; },
      (error) => { if (error.name !== "AbortError") told.textContent = W.share_failed; }));
  }, () => { /* the other two ways are left */ });
  return button;
}

function copyButton(text, told) {
  return make("button", { type: "button", onclick: async () => {
    text.select();
    let copied = false;
    try { await navigator.clipboard.writeText(text.value); copied = true; } catch { copied = document.execCommand("copy"); }
    told.textContent = copied ? W.copied : W.copy_failed;
  } }, W.copy);
}

// The same look at several places as one line that leads to the first of them.
function leftView(left) {
  const groups = new Map();
  for (const question of left) {
    const key = `${question.stop}|${question.part}|${question.name}`;
    groups.set(key, [...(groups.get(key) || []), question]);
  }
  return make("ul", { class: "stops" }, [...groups.values()].map((group) => make("li", {}, make("button", { type: "button", onclick: () => lookAgain(group[0]) },
    group[0].ask, make("span", { class: "soft" }, group.length > 1 ? `${capital(group[0].part)}: ${group.map((one) => one.place).join(", ")}` : where(group[0]))))));
}

function saveView() {
  const { record, wrong } = makeRecord();
  const left = open(asked());
  const told = make("p", { class: "said", role: "status" });
  const parts = [title(W.save_title)];
  if (wrong.length) parts.push(make("p", { class: "wrong" }, W.save_faults), listOf(wrong));
  const text = make("textarea", { readonly: true, rows: "8", value: JSON.stringify(record, null, 1) });
  parts.push(headField("remarks"), make("p", {}, fill(W.save_photos, { photos: photos.size, file: fileName() })),
    make("div", { class: "row" }, make("button", { type: "button", class: "strong", id: "save", onclick: () => saveRecord(told) }, W.save), shareButton(told)), told,
    make("p", { id: "kept", class: keeps ? "soft" : "wrong" }, keeps ? "" : W.not_kept),
    make("details", {}, make("summary", {}, W.as_text), make("p", {}, W.as_text_tip), make("div", { class: "row" }, copyButton(text, told)), labelled(W.as_text, text)),
    make("h2", {}, left.length ? fill(left.length > 1 ? W.save_skipped : W.save_skipped_one, { number: left.length }) : W.save_nothing_skipped), leftView(left),
    make("div", { class: "row" }, make("button", { type: "button", onclick: askEmpty }, W.again)));
  return parts;
}

function dialogWith(id, heading, lines, buttons) {
  const dialog = document.getElementById(id);
  dialog.replaceChildren(make("h2", { id: `${id}-title` }, heading), ...lines.map((line) => make("p", {}, line)),
    make("div", { class: "row" }, buttons.map(([label, act, strong]) => make("button", { type: "button", class: strong ? "strong" : null,
      onclick: () => { dialog.close(); act(); } }, label))));
  dialog.showModal();
  return dialog;
}

function askEmpty() {
  dialogWith("sure", W.again, [W.again_sure], [
    [W.again_no, () => {}, true],
    [W.again_yes, async () => { await forget(); show("start"); }],
  ]);
}
