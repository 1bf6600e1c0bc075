// The note's "Through the stages": a slider that swaps figure, tables and words together. All it
// shows was written by the program into #viewer-data as printed; nothing is worked out here, and
// nothing is loaded. Without this script the note is complete and the viewer stays hidden.
(function () {
  "use strict";

  const viewer = document.getElementById("viewer");
  const data = JSON.parse(document.getElementById("viewer-data").textContent);
  const slider = document.getElementById("viewer-slider");
  const words = document.getElementById("viewer-words");
  const picture = document.getElementById("viewer-picture");
  const reactions = document.getElementById("viewer-reactions").tBodies[0];
  const facts = document.getElementById("viewer-facts").tBodies[0];
  const chart = document.getElementById("viewer-chart");
  const chartWords = document.getElementById("viewer-chart-words");
  const radios = Array.from(viewer.querySelectorAll("input[name=viewer-masonry]"));
  const back = document.getElementById("viewer-back");
  const on = document.getElementById("viewer-on");
  const dash = "\u2013";
  const hashForm = /^#stage-([0-9]+)-([a-z]+)$/;

  const shown = { stage: data.start, model: data.models[data.models.length - 1], support: "" };

  function make(tag, text, attributes) {
    const element = document.createElement(tag);
    if (text !== undefined) element.textContent = text;
    Object.entries(attributes || {}).forEach(([name, value]) => element.setAttribute(name, value));
    return element;
  }

  function drawn(tag, attributes, text) {
    const element = document.createElementNS("http://www.w3.org/2000/svg", tag);
    Object.entries(attributes).forEach(([name, value]) => element.setAttribute(name, value));
    if (text !== undefined) element.textContent = text;
    return element;
  }

  function supports() {
    return data.supports[shown.model];
  }

  function supportNamed(name) {
    return supports().find((support) => support.name === name);
  }

  // The picture under the buttons.
  function showPicture() {
    const template = document.getElementById("view-" + (shown.stage + 1) + "-" + shown.model);
    picture.replaceChildren(template ? template.content.cloneNode(true) : make("p", "Not analysed."));
  }

  function showReactions() {
    const rows = supports().map((support) => {
      const row = make("tr", undefined, { "data-support": support.name });
      const head = make("th", undefined, { scope: "row" });
      const button = make("button", support.name, { type: "button", "data-support": support.name });
      head.append(button);
      row.append(head, make("td", support.values[shown.stage] || dash, { class: "fig" }));
      return row;
    });
    const focused = reactions.contains(document.activeElement) ? shown.support : null;
    reactions.replaceChildren(...rows);
    if (focused !== null) {
      const again = rows.find((row) => row.dataset.support === focused);
      if (again) again.querySelector("button").focus();
    }
  }

  function showFacts() {
    facts.replaceChildren(...data.facts[shown.model][shown.stage].map((fact) => {
      const row = make("tr", undefined, { "data-fact": fact.key });
      row.append(make("th", fact.what, { scope: "row" }), make("td", fact.found));
      return row;
    }));
  }

  // The load on each needle beside its place on the picture.
  function showSpots() {
    viewer.querySelectorAll(".spot").forEach((spot) => {
      const support = supportNamed(spot.dataset.support);
      const value = support ? support.values[shown.stage] : null;
      spot.querySelector(".spot-load").textContent = value === null ? dash : value;
      spot.classList.toggle("absent", value === null);
      spot.setAttribute("aria-label", spot.dataset.support + ": " +
        (value === null ? "not there" : value + " kN") + ". Show it through the stages");
    });
  }

  function showWords() {
    const stage = data.stages[shown.stage];
    const text = "Stage " + (shown.stage + 1) + " of " + data.stages.length + ": " + stage.name +
      ", day " + stage.day + ", " + shown.model + " masonry.";
    words.replaceChildren(make("strong", text), document.createTextNode(" " + stage.done));
    slider.value = String(shown.stage);
    slider.setAttribute("aria-valuetext", text);
    back.disabled = shown.stage === 0;
    on.disabled = shown.stage === data.stages.length - 1;
    viewer.querySelectorAll(".tick").forEach((tick, index) => {
      tick.classList.toggle("current", index === shown.stage);
    });
    radios.forEach((radio) => {
      radio.checked = radio.value === shown.model;
    });
  }

  function bar(support, index, box, most) {
    const text = support.values[index];
    const middle = box.left + box.step * (index + 0.5);
    const group = drawn("g", { class: index === shown.stage ? "bar current" : "bar" });
    group.append(drawn("text", { x: middle, y: box.foot + 13, "text-anchor": "middle" },
      String(index + 1)));
    const value = text === null ? 0 : Math.max(0, Number(text));
    const height = most > 0 ? box.height * value / most : 0;
    const top = box.foot - height;
    if (text !== null) {
      group.append(drawn("rect", { x: middle - 0.36 * box.step, y: top, width: 0.72 * box.step,
        height: Math.max(height, 0.75) }));
    }
    const upright = box.step < 36;
    const place = upright
      ? { x: middle + 4, y: top - 4, transform: "rotate(-90 " + (middle + 4) + " " + (top - 4) + ")" }
      : { x: middle, y: top - 4, "text-anchor": "middle" };
    group.append(drawn("text", Object.assign({ class: "value" }, place), text === null ? dash : text));
    return group;
  }

  // What one support carries through all stages, with numbers.
  function showChart() {
    const support = supportNamed(shown.support) || supports()[0];
    shown.support = support.name;
    const width = Math.max(chart.clientWidth, 240);
    const height = 170;
    const box = { left: 2, step: (width - 4) / data.stages.length, foot: height - 18, height: 108 };
    const most = Math.max(...support.values.map((text) => text === null ? 0 : Number(text)));
    const title = support.name + " through the stages, kN, " + shown.model + " masonry";
    const spoken = support.values.map((text, index) => data.stages[index].name + " " +
      (text === null ? "not there" : text)).join(", ");
    const svg = drawn("svg", { viewBox: "0 0 " + width + " " + height, width: width, height: height,
      role: "img", "aria-label": title + ": " + spoken });
    svg.append(drawn("line", { x1: 0, x2: width, y1: box.foot, y2: box.foot, class: "axis" }));
    support.values.forEach((text, index) => svg.append(bar(support, index, box, most)));
    chartWords.textContent = title;
    chart.replaceChildren(svg);
    viewer.querySelectorAll("[data-support]").forEach((element) => {
      element.classList.toggle("chosen", element.dataset.support === support.name);
    });
  }

  function show() {
    showPicture();
    showReactions();
    showFacts();
    showSpots();
    showWords();
    showChart();
  }

  function remember() {
    history.replaceState(null, "", "#stage-" + (shown.stage + 1) + "-" + shown.model);
  }

  function goTo(stage, model) {
    const last = data.stages.length - 1;
    shown.stage = Math.min(Math.max(stage, 0), last);
    if (data.models.includes(model)) shown.model = model;
    show();
    remember();
  }

  // Whether the address names a stage.
  function readHash() {
    const found = hashForm.exec(location.hash);
    if (!found) return false;
    const stage = Number(found[1]) - 1;
    if (stage < 0 || stage >= data.stages.length || !data.models.includes(found[2])) return false;
    shown.stage = stage;
    shown.model = found[2];
    return true;
  }

  function choose(event) {
    const named = event.target.closest ? event.target.closest("[data-support]") : null;
    if (!named || !viewer.contains(named) || named.dataset.support === shown.support) return;
    shown.support = named.dataset.support;
    showChart();
  }

  slider.addEventListener("input", () => goTo(Number(slider.value), shown.model));
  back.addEventListener("click", () => goTo(shown.stage - 1, shown.model));
  on.addEventListener("click", () => goTo(shown.stage + 1, shown.model));
  radios.forEach((radio) => {
    radio.addEventListener("change", () => goTo(shown.stage, radio.value));
  });
  ["mouseover", "focusin", "click"].forEach((kind) => viewer.addEventListener(kind, choose));
  window.addEventListener("resize", showChart);
  window.addEventListener("hashchange", () => {
    if (readHash()) show();
  });

  viewer.hidden = false;
  const named = readHash();
  const firstNeedle = supports().find((support) => support.kind === "needle");
  if (firstNeedle) shown.support = firstNeedle.name;
  show();
  if (named) viewer.scrollIntoView();
}());
