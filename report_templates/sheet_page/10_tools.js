// Small tools: elements, words, and what a number means.
const DATA = JSON.parse(document.getElementById("data").textContent);
const W = DATA.words;
const QUESTIONS = DATA.looks.map(([stop, prop, place, minutes]) => {
  const entry = DATA.props[prop];
  return { ...entry, stop, place, minutes, key: `${entry.part}|${place}|${entry.name}` };
});
// A limit is asked for once for all places of a look at a stop: beside the first of them.
const FIRST = new Map();
for (const question of QUESTIONS) {
  const look = `${question.stop}|${question.part}|${question.name}`;
  if (!FIRST.has(look)) FIRST.set(look, question.key);
}
const firstOf = (question) => FIRST.get(`${question.stop}|${question.part}|${question.name}`);
const BY_KEY = new Map(QUESTIONS.map((question, number) => [question.key, { ...question, number }]));

function fill(text, values) {
  return text.replace(/\{(\w+)\}/g, (whole, name) => (name in values ? String(values[name]) : whole));
}

// An element with attributes, listeners (on...) and children; texts go in as texts, never as markup.
function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === null || value === false) continue;
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else if (name === "value" || name === "checked" || name === "disabled") element[name] = value;
    else element.setAttribute(name, value === true ? "" : value);
  }
  element.append(...children.flat().filter((child) => child !== null && child !== undefined && child !== ""));
  return element;
}

const capital = (text) => text.slice(0, 1).toUpperCase() + text.slice(1);

function where(question) {
  const part = capital(question.part);
  return question.place === DATA.whole || question.place === question.part ? part : `${part}, ${question.place}`;
}

// A typed number as plain text, or why it is none. A decimal comma is taken as a point where nothing else can be meant.
function plainNumber(typed, whole) {
  let text = typed.trim().replace(/[\u00a0\u2009\u202f]/g, " ").replace(/^[−–]/, "-");
  if (/^(\d+ )?\d+\/[1-9]\d*$/.test(text)) return { text };
  if (whole && /^\d{1,3}([., ]\d{3})+$/.test(text)) text = text.replace(/[., ]/g, "");
  else if (/,/.test(text)) {
    if (/^-?\d+,\d{3}$/.test(text) && !/^-?0,/.test(text)) return { wrong: W.which_comma };
    text = text.replace(/^(-?\d+),(\d+)$/, "$1.$2");
  }
  if (/^-?\d+( \d{3})*(\.\d+)?$/.test(text)) return { text };
  return { wrong: W.not_a_number };
}

function numberOf(text) {
  const fraction = /^(?:(\d+) )?(\d+)\/(\d+)$/.exec(text);
  if (fraction) return Number(fraction[1] || 0) + Number(fraction[2]) / Number(fraction[3]);
  return Number(text.replace(/ /g, ""));
}

// In the base unit of the dimension, by the factors that came with the page.
function inBase(text, unit, dimension) {
  const [, factor, offset] = DATA.units[dimension].find(([name]) => name === unit);
  return (numberOf(text) - offset) * factor;
}

function localDay(now = new Date()) {
  const two = (number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function readDay(year, month, day) {
  if (!/^\d{4}$/.test(year) || !/^\d{1,2}$/.test(month) || !/^\d{0,2}$/.test(day)) return { wrong: W.not_a_day };
  const two = (text) => text.padStart(2, "0");
  const iso = `${year}-${two(month)}-${two(day || "1")}`;
  const found = new Date(`${iso}T12:00:00`);
  const same = !Number.isNaN(found.getTime()) && localDay(found) === iso;
  if (!same || iso > localDay() || Number(year) < 1900) return { wrong: W.not_a_day };
  return { value: day ? iso : `${year}-${two(month)}` };
}
