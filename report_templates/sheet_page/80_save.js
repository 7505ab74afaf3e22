// The record as a file, what is left open, and an empty page for the next machine.
const fileName = () => `record_${((headReading("date") || {}).value || localDay()).replace(/[^0-9-]/g, "")}.zip`;

async function saveRecord(told) {
  const { record } = makeRecord();
  const used = new Set(JSON.stringify(record).match(/photos\/[A-Za-z0-9_]+\.jpg/g) || []);
  const files = [["record.json", new TextEncoder().encode(JSON.stringify(record, null, 1))]];
  for (const [key, blob] of photos) {
    if (used.has(photoName(key))) files.push([photoName(key), new Uint8Array(await blob.arrayBuffer())]);
  }
  const address = URL.createObjectURL(zip(files));
  const link = make("a", { href: address, download: fileName() });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60000);
  told.textContent = fill(W.saved, { file: fileName() });
}

function saveView() {
  const { record, wrong } = makeRecord();
  const left = open(asked());
  const told = make("p", { class: "said", role: "status" });
  const parts = [title(W.save_title)];
  if (wrong.length) parts.push(make("p", { class: "wrong" }, W.save_faults), listOf(wrong));
  parts.push(headField("remarks"), make("p", {}, fill(W.save_photos, { photos: photos.size, file: fileName() })),
    make("div", { class: "row" }, make("button", { type: "button", class: "strong", id: "save", onclick: () => saveRecord(told) }, W.save)), told,
    make("p", { id: "kept", class: "soft" }, keeps ? "" : W.not_kept),
    make("h2", {}, left.length ? fill(W.save_skipped, { number: left.length }) : W.save_nothing_skipped),
    listOf(left.map((question) => `${where(question)}: ${question.ask}`)));
  const text = make("textarea", { readonly: true, rows: "8", value: JSON.stringify(record, null, 1) });
  parts.push(make("details", {}, make("summary", {}, W.as_text), make("p", {}, W.as_text_tip), labelled(W.as_text, text)),
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
