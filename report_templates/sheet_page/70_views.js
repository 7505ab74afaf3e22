// What fills the screen: the start, one stop at a time, and the saving.
const VIEWS = ["start", ...DATA.stops.map((_, number) => `stop ${number}`), "save"];
const main = document.getElementById("main");

function duration(minutes) {
  const whole = Math.max(1, Math.round(minutes));
  if (whole > 120) return fill(W.hours_many, { hours: Math.round(whole / 60) });
  return whole === 1 ? W.minutes_one : fill(W.minutes_many, { minutes: whole });
}
const sumOf = (list) => list.reduce((sum, question) => sum + question.minutes, 0);
const open = (list) => list.filter((question) => !given(question));
const atStop = (number) => asked().filter((question) => question.stop === number);
const title = (text, level = "h1") => make(level, { tabindex: "-1" }, text);

function show(view, focus = true) {
  state.view = VIEWS.includes(view) ? view : "start";
  const [kind, number] = state.view.split(" ");
  const parts = kind === "stop" ? stopView(Number(number)) : kind === "save" ? saveView() : startView();
  main.replaceChildren(...parts.flat().filter(Boolean));
  const at = VIEWS.indexOf(state.view);
  document.getElementById("back").disabled = at === 0;
  document.getElementById("next").disabled = at === VIEWS.length - 1;
  showProgress();
  if (focus) {
    window.scrollTo({ top: 0, behavior: "instant" });
    main.querySelector("h1").focus({ preventScroll: true });
  }
}

function go(view) {
  state.view = view;
  keep();
  show(view);
}

function showProgress() {
  const all = asked();
  const left = open(all);
  document.getElementById("progress-text").textContent = left.length
    ? fill(W.progress, { done: all.length - left.length, all: all.length, time: duration(sumOf(left)) })
    : fill(W.progress_done, { all: all.length });
  const bar = document.getElementById("progress");
  bar.max = all.length || 1;
  bar.value = all.length - left.length;
}

function showKept() {
  const line = document.getElementById("kept");
  if (!line) return;
  const time = new Date().toTimeString().slice(0, 5);
  line.textContent = keeps ? fill(W.kept, { time }) : W.not_kept;
  line.className = keeps ? "soft" : "wrong";
}

function headField(name) {
  const set = (event) => { state.head[name] = event.target.value; keep(); check(); };
  const told = make("p", { class: "said wrong", role: "status", hidden: true });
  const check = () => {
    const found = headReading(name);
    told.hidden = !(found && found.wrong);
    told.textContent = found && found.wrong ? found.wrong : "";
  };
  const box = make(name === "remarks" ? "textarea" : "input", { type: name === "remarks" ? null : "text",
    autocomplete: "off", value: state.head[name] || "", oninput: set,
    inputmode: ["year", "odometer"].includes(name) ? "numeric" : null });
  check();
  if (name !== "odometer") return make("div", {}, labelled(DATA.head_words[name], box), told);
  const unit = make("select", { onchange: (event) => { state.head.odometer_unit = event.target.value; keep(); } },
    options(DATA.odometer_units, state.head.odometer_unit || DATA.odometer_units[0]));
  return make("div", {}, make("div", { class: "pair" }, labelled(DATA.head_words[name], box), labelled(W.unit, unit)), told);
}

function ticks(entries, table) {
  return entries.map(([key, label]) => make("label", { class: "choice" }, make("input", { type: "checkbox",
    checked: Boolean(table[key]), onchange: (event) => { table[key] = event.target.checked; keep(); showProgress(); } }), label));
}

const listOf = (lines) => make("ul", { class: "plain" }, lines.map((line) => make("li", {}, line)));

function startView() {
  const about = make("section", {}, title(`${capital(DATA.kind)}, ${DATA.purpose}`), make("p", {}, DATA.total),
    DATA.left_out && make("p", { class: "soft" }, DATA.left_out), make("p", { id: "kept", class: keeps ? "soft" : "wrong" },
      keeps ? (state.begun ? W.here_since : "") : W.not_kept));
  const machine = make("section", {}, make("h2", {}, W.start_title), DATA.head.map(([, name]) => headField(name)));
  const works = DATA.works.length && make("section", {}, make("h2", {}, DATA.work_title), make("p", {}, DATA.work_intro),
    DATA.works.map(([work, ask, places]) => make("fieldset", {}, make("legend", {}, ask),
      make("div", {}, ticks(places.map((place) => [`${work} @ ${place}`, place]), state.works)))));
  const without = DATA.optional.length && make("section", {}, make("h2", {}, W.without_title), make("p", {}, W.without_intro),
    ticks(DATA.optional.map((part) => [part, part]), state.without));
  const how = make("section", {}, make("h2", {}, DATA.tools_title), make("p", {}, DATA.bring),
    make("details", {}, make("summary", {}, DATA.how_title), listOf([...DATA.how, ...DATA.photos])), make("h2", {}, DATA.cautions_title),
    DATA.first_cautions.map((one) => make("details", { class: "caution" }, make("summary", {}, one.title), make("p", {}, one.text))));
  return [about, how, machine, works, without, stopsView()];
}

function stopsView() {
  const lines = DATA.stops.map((stop, number) => {
    const all = atStop(number);
    const left = open(all);
    const line = fill(left.length ? W.stop_line : W.stop_done, { done: all.length - left.length, all: all.length, time: duration(sumOf(left)) });
    return make("li", {}, make("button", { type: "button", onclick: () => go(`stop ${number}`) },
      `${number + 1} ${capital(stop.title)}`, make("span", { class: "soft" }, line)));
  });
  lines.push(make("li", {}, make("button", { type: "button", onclick: () => go("save") }, W.save_title)));
  return make("section", { id: "stops" }, title(W.stops_title, "h2"), make("ol", { class: "stops" }, lines));
}

function stopView(number) {
  const stop = DATA.stops[number];
  const all = atStop(number);
  const parts = [title(`${number + 1} ${capital(stop.title)}`), make("p", {}, stop.do)];
  const told = new Set();
  let part = null;
  all.forEach((question, at) => {
    if (where(question) !== part) parts.push(make("h2", {}, (part = where(question))));
    parts.push(questionView(question, at + 1, all.length, told));
  });
  return parts;
}
