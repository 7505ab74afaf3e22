// From what was typed to a record: the value of each answer, or why it cannot be read yet.
function answerOf(key) {
  return state.answers[key] || {};
}

function hidden(question) {
  if (state.without[question.part]) return true;
  if (question.moment !== "service" || !DATA.works.length) return false;
  const done = Object.keys(state.works).filter((one) => state.works[one]);
  if (!done.length || !question.after.length) return false;
  return !done.some((one) => {
    const [work, place] = one.split(" @ ");
    return question.after.includes(work) && related(place, question.place);
  });
}

function related(one, other) {
  const contains = (outer, inner) => outer === DATA.whole || inner === outer || inner.startsWith(`${outer} `);
  return contains(one, other) || contains(other, one);
}

const asked = () => QUESTIONS.filter((question) => !hidden(question));

// {value}, {silence}, {wrong} or null for an answer that was not given.
function reading(question) {
  const answer = answerOf(question.key);
  if (answer.unseen) return { silence: answer.unseen };
  if (answer.unknown) return { value: "unknown" };
  if (question.kind === "choice" || question.kind === "yes_no") return answer.word ? { value: answer.word } : null;
  if (question.kind === "date") {
    const parts = [answer.year || "", answer.month || "", answer.day || ""];
    return parts.some(Boolean) ? readDay(...parts.map((part) => part.trim())) : null;
  }
  const text = (answer.text || "").trim();
  if (!text) return null;
  if (question.kind === "text") return { value: text };
  if (question.kind === "tyre_code") {
    return /^\d{3,4}$/.test(text) ? { value: text } : { wrong: W.not_a_code };
  }
  const number = plainNumber(text, question.kind !== "quantity");
  if (number.wrong) return number;
  if (question.kind === "count") return readCount(question, number.text);
  return readAmount(question, number.text, answer.unit || unitFor(question), question.low, question.high);
}

function readCount(question, text) {
  const number = numberOf(text);
  const fits = Number.isInteger(number) && number >= question.low && number <= question.high;
  return fits ? { value: String(number) } : { wrong: fill(W.not_whole, { low: question.low, high: question.high }) };
}

function readAmount(question, text, unit, low, high) {
  const base = inBase(text, unit, question.dimension);
  if (base < low - 1e-9 * Math.abs(low) || base > high + 1e-9 * Math.abs(high)) {
    return { wrong: fill(W.not_believable, { range: question.plausible }) };
  }
  return { value: `${text} ${unit}` };
}

// The unit and the tool that were last chosen are offered at the next look; a number keeps those it was typed with.
const unitFor = (question) => state.units[question.dimension] || question.unit;
const toolFor = (question) => state.tools[`${question.part}|${question.name}`] || "";
const given = (question) => { const found = reading(question); return Boolean(found) && !found.wrong; };

function photoName(key) {
  return `${key.replace(/[^A-Za-z0-9]+/g, "_")}.jpg`;
}

function entryOf(question, folder) {
  const answer = answerOf(question.key);
  const found = reading(question);
  const note = (answer.note || "").trim();
  const entry = found.silence ? { [found.silence]: note || null } : { value: found.value };
  if (!found.silence && question.kind === "quantity" && answer.tool) entry.tool = answer.tool;
  if (!found.silence && note) entry.note = note;
  if (photos.has(question.key)) entry.photo = folder + photoName(question.key);
  return Object.keys(entry).length === 1 && "value" in entry ? entry.value : entry;
}

const HEAD = {
  year: (text) => (/^\d{4}$/.test(text) ? { value: text } : { wrong: W.not_a_year }),
  country: (text) => (/^[A-Za-z]{2}$/.test(text) ? { value: text.toUpperCase() } : { wrong: W.not_a_country }),
  vin: (text) => {
    const plain = text.toUpperCase().replace(/ /g, "");
    const fits = /^[A-Z0-9*-]{5,20}$/.test(plain) && !(plain.length === 17 && /[IOQ]/.test(plain));
    return fits ? { value: plain } : { wrong: W.not_a_vin };
  },
  date: (text) => {
    const parts = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text);
    return parts ? readDay(parts[1], parts[2], parts[3]) : { wrong: W.not_a_day };
  },
  odometer: (text) => {
    const number = plainNumber(text, true);
    return number.wrong ? number : { value: `${number.text} ${state.head.odometer_unit || DATA.odometer_units[0]}` };
  },
};

function headReading(name) {
  const text = (state.head[name] || "").trim();
  if (!text) return null;
  return HEAD[name] ? HEAD[name](text) : { value: text };
}

// The machine's own limit as it stands in a record, why it cannot be read yet, or null.
function limitReading(question, limit) {
  const typed = (answerOf(firstOf(question)).limits || {})[limit.name] || {};
  const ends = limit.senses.filter((sense) => (typed[sense] || "").trim());
  if (!ends.length) return null;
  const unit = typed.unit || limit.unit;
  const found = ends.map((sense) => {
    const number = plainNumber(typed[sense], false);
    if (number.wrong) return number;
    if (!limit.about) return readAmount(question, number.text, unit, question.low, question.high);
    return numberOf(number.text) < 0 ? { wrong: W.not_a_number } : { value: `${number.text} ${unit}` };
  });
  const wrong = found.find((one) => one.wrong);
  if (wrong) return wrong;
  if (ends.length === 2 && numberOf(found[0].value.split(" ").slice(0, -1).join("")) > numberOf(found[1].value.split(" ").slice(0, -1).join(""))) return { wrong: W.wrong_way_round };
  if (!typed.origin) return { wrong: W.no_origin };
  const text = ends.length === 2 ? `from ${found[0].value} to ${found[1].value}` : `${ends[0]} ${found[0].value}`;
  return { value: `${text} (${typed.origin})` };
}

// The record, and a list of what could not be read into it.
function makeRecord(folder = "photos/") {
  const wrong = [];
  const record = { machine: { kind: DATA.kind }, inspection: { purpose: DATA.purpose }, observations: {} };
  for (const [section, name] of DATA.head) {
    const found = headReading(name);
    if (found && found.wrong) wrong.push(`${DATA.head_words[name]}: ${found.wrong}`);
    else if (found) record[section][name] = found.value;
  }
  if (!record.inspection.date) record.inspection.date = localDay();
  const without = Object.keys(state.without).filter((part) => state.without[part]);
  if (without.length) record.machine.without = without;
  const done = Object.keys(state.works).filter((one) => state.works[one]);
  if (done.length) record["work done"] = done;
  for (const question of asked()) {
    const address = `${question.part} @ ${question.place}`;
    const found = reading(question);
    if (found && found.wrong) wrong.push(`${where(question)}: ${question.ask} ${found.wrong}`);
    else if (found) (record.observations[address] ||= {})[question.name] = entryOf(question, folder);
    else if (photos.has(question.key) || (answerOf(question.key).note || "").trim()) wrong.push(`${where(question)}: ${question.ask} ${W.no_answer}`);
    for (const limit of question.limits) {
      const own = limitReading(question, limit);
      if (own && own.wrong && firstOf(question) !== question.key) continue;
      if (own && own.wrong) wrong.push(`${where(question)}: ${W.own_limit}. ${own.wrong}`);
      else if (own) ((record.limits ||= {})[address] ||= {})[limit.name] = own.value;
    }
  }
  const remarks = (state.head.remarks || "").trim();
  if (remarks) record.remarks = [remarks];
  return { record, wrong };
}
