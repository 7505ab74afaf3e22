// One look at one place as a group of fields. Number first, then the choice; a note comes last.
let serial = 0;
const fresh = (name) => `${name}-${(serial += 1)}`;

function put(question, change) {
  state.answers[question.key] = { ...answerOf(question.key), ...change };
  state.last = question.key;
  keep();
  showProgress();
}

function labelled(label, field, extra = {}) {
  field.id = fresh("field");
  return make("div", extra, make("label", { for: field.id }, label), field);
}

function options(names, chosen, labels = names) {
  return names.map((name, at) => {
    const option = make("option", { value: name }, labels[at]);
    option.selected = name === chosen;
    return option;
  });
}

function questionView(question, number, count, told = new Set()) {
  const warned = question.cautions.filter((name) => !told.has(name));
  warned.forEach((name) => told.add(name));
  const hint = make("p", { class: "said", role: "status" });
  const body = make("fieldset", { class: "inner" });
  const silences = make("div", { class: "row silences" });
  const view = make("fieldset", { class: "look", "data-key": question.key },
    make("legend", {}, make("span", { class: "hidden" }, `${where(question)}: `), question.ask, make("span", { class: "tags" },
      [question.time, question.critical ? W.decides : "", fill(W.question_count, { number, all: count })]
        .filter(Boolean).join(" · "))));
  const check = () => {
    const found = reading(question);
    hint.textContent = found && found.wrong ? found.wrong
      : found && question.kind === "quantity" && found.value ? fill(W.read_as, found) : "";
    hint.classList.toggle("wrong", Boolean(found && found.wrong));
    body.disabled = Boolean(answerOf(question.key).unseen);
    clear.hidden = !reading(question);
    for (const button of silences.children) {
      if (button.dataset.silence) button.setAttribute("aria-pressed", button.dataset.silence === answerOf(question.key).unseen);
    }
  };
  const set = (change) => { put(question, change); check(); };
  body.append(make("legend", { class: "hidden" }, W.answer), ...answerFields(question, set).filter(Boolean));
  for (const silence of ["could not see", "not checked", "does not apply"]) {
    silences.append(make("button", { type: "button", "data-silence": silence, "aria-pressed": "false",
      onclick: () => set({ unseen: answerOf(question.key).unseen === silence ? null : silence }) },
    W[silence.replaceAll(" ", "_")]));
  }
  const clear = make("button", { type: "button", class: "quiet", onclick: () => {
    state.answers[question.key] = {};
    put(question, {});
    const anew = questionView(question, number, count, new Set(question.cautions.filter((name) => !warned.includes(name))));
    view.replaceWith(anew);
    anew.querySelector(".inner input, .inner select").focus();
  } }, W.clear);
  const again = told.has(`look ${question.look}`);
  told.add(`look ${question.look}`);
  const how = again ? make("details", {}, make("summary", {}, W.how_again), make("p", { class: "soft" }, question.look))
    : make("p", { class: "soft" }, question.look);
  view.append(cautions(warned), how, body, hint, silences, clear, ...[limitFields(question, set)].filter(Boolean), noteView(question, set));
  check();
  return view;
}

function cautions(names) {
  return make("div", {}, names.map((name) => {
    const { title, text } = DATA.cautions[name];
    return make("div", { class: "caution" }, make("p", {}, make("b", {}, `${DATA.caution}: ${title}. `), text));
  }));
}

function answerFields(question, set) {
  const answer = answerOf(question.key);
  if (question.kind === "choice" || question.kind === "yes_no") return [choiceFields(question, answer, set)];
  if (question.kind === "date") return [dateFields(answer, set), unknownField(answer, set)];
  let unit = null;
  let tool = null;
  const measured = () => ({ ...(unit && { unit: unit.value }), ...(tool && { tool: tool.value }) });
  const decimal = question.low < 0 ? "text" : "decimal"; // the keys for decimals have no minus on some phones
  const box = make("input", { type: "text", autocomplete: "off", value: answer.text || "",
    inputmode: { text: "text", quantity: decimal }[question.kind] || "numeric",
    oninput: (event) => set({ text: event.target.value, unknown: false, ...measured() }) });
  if (question.kind === "text") return [labelled(W.text, box)];
  if (question.kind === "count" || question.kind === "tyre_code") return [labelled(W.number, box)];
  unit = make("select", { onchange: (event) => {
    state.units[question.dimension] = event.target.value;
    set({ unit: event.target.value });
  } }, options(question.units, answer.unit || unitFor(question)));
  const row = make("div", { class: "pair" }, labelled(W.number, box), labelled(W.unit, unit));
  if (question.kind === "odometer") return [row, unknownField(answer, set)];
  if (!question.tools.length) return [row];
  const names = ["", ...question.tools.map(([tool]) => tool)];
  const labels = [W.tool_none, ...question.tools.map(([tool, spread]) => (spread ? `${tool} (± ${spread})` : tool))];
  tool = make("select", { onchange: (event) => {
    state.tools[`${question.part}|${question.name}`] = event.target.value;
    set({ tool: event.target.value });
  } }, options(names, answer.tool ?? toolFor(question), labels));
  return [row, labelled(W.tool, tool)];
}

function choiceFields(question, answer, set) {
  const group = fresh("choice");
  return make("div", {}, question.choices.map(([word, means]) => make("label", { class: "choice" },
    make("input", { type: "radio", name: group, value: word, checked: answer.word === word, onchange: () => set({ word }) }),
    make("span", {}, make("b", {}, word), means))));
}

function dateFields(answer, set) {
  const part = (name, label) => labelled(label, make("input", { type: "text", inputmode: "numeric", autocomplete: "off",
    value: answer[name] || "", oninput: (event) => set({ [name]: event.target.value, unknown: false }) }));
  return make("div", { class: "three" }, part("year", W.year), part("month", W.month), part("day", W.day));
}

function unknownField(answer, set) {
  return make("label", { class: "choice" }, make("input", { type: "checkbox", checked: Boolean(answer.unknown),
    onchange: (event) => set({ unknown: event.target.checked }) }), W.unknown);
}

function limitFields(question, set) {
  if (!question.limits.length || firstOf(question) !== question.key) return null;
  const filled = question.limits.some((limit) => limitReading(question, limit));
  return make("details", { open: filled }, make("summary", {}, W.own_limit), question.limits.map((limit) => limitField(question, limit, set)));
}

// Least, most or both, with one unit and where it stands.
function limitField(question, limit, set) {
  const typed = () => (answerOf(question.key).limits || {})[limit.name] || {};
  const hint = make("p", { class: "said", role: "status" });
  const check = () => {
    const found = limitReading(question, limit);
    hint.textContent = found ? found.wrong || fill(W.read_as, found) : "";
    hint.classList.toggle("wrong", Boolean(found && found.wrong));
  };
  const note = (change) => {
    set({ limits: { ...answerOf(question.key).limits, [limit.name]: { ...typed(), ...change } } });
    check();
  };
  const unit = make("select", { onchange: () => note({ unit: unit.value }) }, options(limit.units, typed().unit || limit.unit));
  const boxes = limit.senses.map((sense) => labelled(sense === "at most" ? W.at_most : W.at_least, make("input", { type: "text",
    inputmode: "decimal", autocomplete: "off", value: typed()[sense] || "", oninput: (event) => note({ [sense]: event.target.value, unit: unit.value }) })));
  const origin = make("select", { onchange: () => note({ origin: origin.value }) },
    options(["", "stamped", "manual"], typed().origin || "", [W.tool_none, W.stamped, W.manual]));
  check();
  return make("fieldset", { class: "inner" }, make("legend", {}, limit.about || W.own_limit_here),
    make("div", { class: boxes.length > 1 ? "three" : "pair" }, boxes, labelled(W.unit, unit)), labelled(W.limit_from, origin), hint);
}
