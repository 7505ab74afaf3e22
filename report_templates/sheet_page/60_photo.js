// A note and a photo of one look. The photo is drawn anew on a canvas, smaller: what the camera wrote into the file
// besides the picture (place, time, phone) does not come along.
const LONGEST_EDGE = 1600;
const QUALITY = 0.85;

async function smaller(file) {
  const picture = await createImageBitmap(file, { imageOrientation: "from-image" });
  const scale = Math.min(1, LONGEST_EDGE / Math.max(picture.width, picture.height));
  const canvas = make("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("no picture"))), "image/jpeg", QUALITY);
  });
}

function noteView(question, set) {
  const answer = answerOf(question.key);
  const text = make("input", { type: "text", autocomplete: "off", value: answer.note || "",
    oninput: (event) => set({ note: event.target.value }) });
  const shown = make("div", { class: "photo" });
  const told = make("p", { class: "said", role: "status" });
  showPhoto(question, shown, told, set);
  const filled = Boolean(answer.note) || photos.has(question.key);
  return make("details", { open: filled }, make("summary", {}, W.more), labelled(W.note, text), shown, told);
}

function showPhoto(question, shown, told, set) {
  const blob = photos.get(question.key);
  const take = async (event) => {
    const [file] = event.target.files;
    if (!file) return;
    told.textContent = "";
    let made;
    try { made = await smaller(file); } catch { told.textContent = W.photo_bad; return; }
    try { await keepPhoto(question.key, made); } catch { told.textContent = W.photo_lost; }
    photos.set(question.key, made);
    set({ photo: true });
    showPhoto(question, shown, told, set);
  };
  // with `capture` a phone opens its camera at once; without it, it offers the pictures it has
  const fileButton = (label, camera) => make("div", { class: "file" },
    make("input", { type: "file", accept: "image/*", capture: camera && "environment", "aria-label": label, onchange: take }),
    make("span", { class: "button", "aria-hidden": "true" }, label));
  const parts = [];
  if (blob) {
    const address = URL.createObjectURL(blob);
    parts.push(make("img", { src: address, alt: fill(W.photo_alt, { question: question.ask }),
      onload: () => URL.revokeObjectURL(address) }));
    parts.push(make("button", { type: "button", onclick: async () => {
      photos.delete(question.key);
      try { await store("readwrite", (kept) => kept.delete(`photo ${question.key}`)); } catch { /* was not kept */ }
      set({ photo: false });
      showPhoto(question, shown, told, set);
    } }, W.photo_remove));
  }
  parts.push(make("p", { class: "soft" }, W.photo_tip), make("div", { class: "row" },
    fileButton(blob ? W.photo_again : W.photo, true), fileButton(W.photo_choose, false)));
  shown.replaceChildren(...parts);
}
