// After an interruption the last look is asked again: a phone call is where a wrong answer slips in.
const AWAY = 60000;

function said(question) {
  const found = reading(question);
  return !found || found.wrong ? W.away_open : fill(W.away_answer, { answer: found.value || found.silence });
}

function lookAgain(question) {
  go(`stop ${question.stop}`);
  const view = main.querySelector(`[data-key="${CSS.escape(question.key)}"]`);
  if (!view) return;
  view.scrollIntoView({ block: "start", behavior: "instant" });
  window.scrollBy({ top: -80, behavior: "instant" });
  (view.querySelector("input:checked") || view.querySelector(".inner input, .inner select, button")).focus({ preventScroll: true });
}

function askAgain() {
  const question = BY_KEY.get(state.again);
  if (!question || hidden(question)) { state.again = null; return; }
  const settle = (act) => () => { state.again = null; keep(); act(); };
  const dialog = dialogWith("away", W.away_title, [`${where(question)}: ${question.ask}`, said(question)], [
    [W.away_yes, settle(() => main.querySelector("h1").focus({ preventScroll: true })), true],
    [W.away_no, settle(() => lookAgain(question))],
  ]);
  dialog.oncancel = settle(() => lookAgain(question));
}

document.addEventListener("visibilitychange", () => {
  if (document.visibilityState === "hidden") {
    state.left = Date.now();
    if (state.begun) keep();
  } else if (state.last && state.left && Date.now() - state.left > AWAY) {
    state.again = state.last;
    keep();
    askAgain();
  }
});

window.addEventListener("beforeunload", (event) => {
  if (!keeps && state.begun) event.preventDefault();
});

async function begin() {
  const before = await loadKept();
  document.getElementById("back").addEventListener("click", () => go(VIEWS[VIEWS.indexOf(state.view) - 1]));
  document.getElementById("next").addEventListener("click", () => go(VIEWS[VIEWS.indexOf(state.view) + 1]));
  document.getElementById("list").addEventListener("click", () => {
    go("start");
    const stops = document.getElementById("stops");
    stops.scrollIntoView({ behavior: "instant" });
    stops.querySelector("h2").focus({ preventScroll: true });
  });
  show(state.view, false);
  if (before && state.last) {
    state.again = state.last;
    askAgain();
  }
}
begin();
