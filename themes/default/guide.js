// What a learner adds to a guide and takes away: notes, a file of ticks and notes, and reading one step at a time.
// All of it on this device; nothing is sent anywhere. Every word shown stands in the page.
(function () {
  "use strict";
  var kept = self.KEPT, all = kept && kept.all, fill = kept && kept.fill;
  var own = document.getElementById("own"), head = document.querySelector(".reading-head");
  if (!kept || !own || !head) return;
  var root = document.documentElement, words = own.dataset;
  var number = words.guide;
  var dialog = document.querySelector(".ask"), chooser = own.querySelector("[type=file]"), named = document.getElementById("own-name");
  var steps = all(document, ".step");

  function act(name) { return document.querySelector('[data-act="' + name + '"]'); }
  function made(tag, text, name) {
    var element = document.createElement(tag);
    if (text) element.textContent = text;
    if (name) element.className = name;
    return element;
  }

  // Notes
  function tall(area) { area.style.height = "auto"; area.style.height = area.scrollHeight + 4 + "px"; }

  kept.parts.forEach(function (part) {
    if (!part.box.classList.contains("step")) return;
    var field = document.getElementById("note-field").content.cloneNode(true), area = field.querySelector("textarea");
    area.id = "note-" + part.id;
    field.querySelector("label").htmlFor = area.id;
    part.area = area;
    area.addEventListener("input", function () { kept.record(part.mark).note = area.value; kept.save(); tall(area); });
    part.box.insertBefore(field, part.box.querySelector(".step-foot"));
  });

  function counted(state) {
    var records = Object.keys(state.parts).map(function (mark) { return state.parts[mark]; });
    return {
      ticks: records.reduce(function (sum, one) { return sum + Object.keys(one.ticks).length; }, 0),
      notes: records.filter(function (one) { return one.note; }).length + state.old.length
    };
  }

  function showOwn() {
    var state = kept.state, count = counted(state);
    kept.parts.forEach(function (part) {
      var told = state.parts[part.mark];
      if (!part.area || part.area.value === (told ? told.note : "")) return;
      part.area.value = told ? told.note : "";
      tall(part.area);
    });
    if (named.value !== state.name) named.value = state.name;
    count.all = all(document, "main [type=checkbox]").length;
    own.querySelector(".own-count").textContent = fill(words.count, count) + (kept.refused ? " " + words.refused : "");
  }

  function tell(sentence, values) { own.querySelector(".own-told").textContent = fill(sentence, values || {}); }

  // The file: a page that anybody can read, with the same told once more for this script to read back.
  function told(name) { return document.getElementById("file-words").content.querySelector('[data-of="' + name + '"]').textContent; }
  function when(time) { return new Date(time).toLocaleString(root.lang, { dateStyle: "long", timeStyle: "short" }); }

  function line(part, input, n) {
    var record = kept.state.parts[part.mark] || { ticks: {}, values: {} }, label = input.closest("label") || input.labels[0];
    var kind = input.dataset.keep, text = label ? label.textContent.trim() : input.getAttribute("aria-label");
    if (kind === "evidence") text = input.closest(".evidence").querySelector("p").textContent + " " + text;
    var lead = kind === "hold" || kind === "evidence" ? told(kind) + ": " : "";
    if (input.type !== "checkbox") return made("li", fill(told(record.values[n] ? "reading" : "unread"), { label: text, value: record.values[n] }));
    var time = record.ticks[n], item = made("li", (time ? "\u2611 " : "\u2610 ") + lead + text + " ");
    item.append(made("small", "(" + (time ? fill(told("ticked"), { when: when(time) }) : told("open")) + ")"));
    return item;
  }

  function note(text) {
    var block = made("p", told("note") + ": ", "note");
    block.append(made("span", text));
    return block;
  }

  function section(part) {
    var box = made("section"), list = made("ul"), record = kept.state.parts[part.mark];
    box.append(made("h2", kept.nameOf(part.id, part.title)), list);
    part.inputs.forEach(function (input, n) { list.append(line(part, input, n)); });
    if (record && record.note) box.append(note(record.note));
    return box;
  }

  function leftOver(entries) {
    var box = made("section");
    box.append(made("h2", told("left")));
    entries.forEach(function (one) { box.append(made("h3", kept.nameOf(one.id, one.title)), note(one.note)); });
    return box;
  }

  function file() {
    var page = document.implementation.createHTMLDocument(told("title"));
    var state = kept.state, data = made("script"), meta = made("meta"), old = state.left.concat(state.old).filter(function (one) { return one.note; });
    var body = page.body, saved = new Date().toISOString();
    meta.setAttribute("charset", "utf-8");
    page.head.prepend(meta);
    page.head.append(made("style", "body{font:16px/1.5 sans-serif;max-width:44em;margin:2em auto;padding:0 1em}ul{list-style:none;padding:0}h2{font-size:1.1em;margin-top:1.6em}.note span{white-space:pre-wrap;font-style:italic}small{color:#555}section{break-inside:avoid}"));
    page.documentElement.lang = root.lang;
    body.append(made("h1", told("title")), document.getElementById("file-words").content.cloneNode(true));
    all(body, "p[data-of]").forEach(function (one) { one.remove(); });
    all(body, "li[data-of]").forEach(function (one) { one.textContent = fill(one.textContent, { name: state.name, when: when(saved) }); });
    if (!state.name) body.querySelector('[data-of="name"]').remove();
    kept.parts.forEach(function (part) { body.append(section(part)); });
    if (old.length) body.append(leftOver(old));
    data.type = "application/json";
    data.id = "ticks-and-notes";
    data.textContent = JSON.stringify({ guide: number, saved: saved, state: state }).replace(/</g, "\\u003c");
    body.append(data);
    return "<!doctype html>\n" + page.documentElement.outerHTML;
  }

  function save() {
    var link = made("a"), name = [number, kept.state.name, new Date().toISOString().slice(0, 10)].join(" ");
    link.download = name.replace(/[^\p{L}\p{N}]+/gu, "-") + ".html";
    link.href = URL.createObjectURL(new Blob([file()], { type: "text/html" }));
    link.click();
    setTimeout(function () { URL.revokeObjectURL(link.href); }, 60000);
    tell(words.saved, { file: link.download });
  }

  function understood(text) {
    try {
      var page = new DOMParser().parseFromString(text, "text/html");
      var data = JSON.parse(page.getElementById("ticks-and-notes").textContent);
      return typeof data.guide === "string" && sound(data.state) ? data : null;
    } catch (e) { return null; }
  }

  // Whatever a file says, only what this script would have written itself is taken from it.
  function sound(state) {
    function texts(told, test) { return Object.keys(told).every(function (key) { return /^\d+$/.test(key) && typeof told[key] === "string" && test(told[key]); }); }
    function any() { return true; }
    function left(one) { return [one.id, one.title, one.note].every(function (text) { return typeof text === "string"; }) && typeof one.ticks === "number"; }
    return state.format === 1 && typeof state.content === "string" && typeof state.name === "string" &&
      [state.left, state.old].every(function (list) { return Array.isArray(list) && list.every(left); }) &&
      Object.keys(state.parts).every(function (mark) {
        var one = state.parts[mark];
        return typeof one.title === "string" && typeof one.id === "string" && typeof one.note === "string" && texts(one.values, any) &&
          texts(one.ticks, function (time) { return !isNaN(Date.parse(time)); });
      });
  }

  function ask(sentence, values, answer, act) {
    var yes = dialog.querySelector("[value=yes]");
    if (!dialog.showModal) { if (window.confirm(fill(sentence, values))) act(); return; }
    dialog.querySelector("p").textContent = fill(sentence, values);
    yes.textContent = answer(yes.dataset);
    dialog.returnValue = "";
    dialog.onclose = function () { if (dialog.returnValue === "yes") act(); };
    dialog.showModal();
  }

  function take(name, text) {
    var data = understood(text), here = counted(kept.state);
    if (!data) { tell(words.strange, { file: name }); return; }
    if (data.guide !== number) { tell(words.elsewhere, { file: name, other: data.guide, guide: number }); return; }
    function put() {
      kept.take(data.state);
      tell(words.came, Object.assign({ file: name }, counted(kept.state)));
    }
    if (!here.ticks && !here.notes) { put(); return; }
    ask(words.replace, { ticks: here.ticks, notes: here.notes, file: name }, function (said) { return said.replace; }, put);
  }

  function clear() {
    ask(words.clear, counted(kept.state), function (said) { return said.clear; }, function () {
      kept.take(kept.fresh());
      tell(words.cleared);
    });
  }

  // Reading one step at a time
  var now = null, away = false, heeded = head.querySelector(".reading-told");

  function seen(step) { var hold = step.querySelector(".hold"); return !hold || recordOf(step).seen; }
  function recordOf(step) { return kept.state.parts[step.dataset.mark] || {}; }

  function watchHolds() {
    if (!("IntersectionObserver" in window)) return;
    var watcher = new IntersectionObserver(function (entries) {
      entries.forEach(function (entry) {
        if (!entry.isIntersecting) return;
        kept.record(entry.target.closest(".step").dataset.mark).seen = true;
        kept.save();
        watcher.unobserve(entry.target);
      });
    }, { threshold: 0.6 });
    all(document, ".step .hold").forEach(function (hold) { watcher.observe(hold); });
  }

  // A hold point that was never on the screen comes before any later step.
  function wall(step) {
    return steps.slice(0, steps.indexOf(step)).filter(function (before) { return !seen(before); })[0];
  }

  function turnTo(step) {
    var held = wall(step), shown = held || step, risks = shown.querySelector(".need-hazards");
    if (now) now.classList.remove("now");
    now = shown;
    now.classList.add("now");
    head.querySelector("strong").textContent = now.querySelector(".step-count").textContent;
    head.querySelector(".reading-risks").replaceChildren.apply(head.querySelector(".reading-risks"), risks ? risks.cloneNode(true).childNodes : []);
    heeded.textContent = held ? fill(head.dataset.wait, { number: held.id.slice(5) }) : "";
    if (location.hash !== "#" + now.id) history.replaceState(null, "", "#" + now.id);
    kept.state.at = now.id;
    kept.save();
    if (held) aim(held.querySelector(".hold"), "center"); else { window.scrollTo(0, 0); aim(headOf(now)); }
  }

  function headOf(step) { return step.querySelector(".step-title").parentNode; }

  function aim(target, block) {
    target.tabIndex = -1;
    target.focus({ preventScroll: true });
    if (block) target.scrollIntoView({ block: block });
  }

  function enter() {
    var wanted = stepAt(location.hash.slice(1)) || document.getElementById(kept.state.at) || steps[0];
    root.classList.add("stepwise");
    head.hidden = false;
    turnTo(wanted);
  }

  function leave() {
    root.classList.remove("stepwise");
    head.hidden = true;
    away = false;
    if (now) { now.scrollIntoView(); aim(headOf(now)); now.classList.remove("now"); }
    now = null;
  }

  function stepAt(id) { var target = id && document.getElementById(id); return target && target.closest(".step"); }

  // A link to another part of the guide leaves the reading; going back to a step takes it up again.
  function followed() {
    var id = location.hash.slice(1), step = stepAt(id), target = id && document.getElementById(id);
    if (!root.classList.contains("stepwise")) { if (away && step) { away = false; enter(); } return; }
    if (step) { turnTo(step); if (target !== step && now === step) aim(target, "center"); return; }
    if (target && target.closest(".stop-list")) { aim(target, "start"); history.replaceState(null, "", "#" + now.id); return; }
    leave();
    away = true;
    if (target) target.scrollIntoView();
  }

  function pressed(event) {
    var target = event.target;
    if (!now || event.ctrlKey || event.metaKey || event.altKey || event.shiftKey || document.querySelector("dialog[open]")) return;
    if (target.closest("input:not([type=checkbox]), textarea, [role=region]")) return;
    if (event.key === "Escape") { leave(); return; }
    var by = { ArrowLeft: -1, ArrowRight: 1 }[event.key], step = by && steps[steps.indexOf(now) + by];
    if (!step) return;
    event.preventDefault();
    location.hash = step.id;
  }

  own.hidden = false;
  document.querySelector(".read-on").hidden = false;
  kept.listen(showOwn);
  named.addEventListener("input", function () { kept.state.name = named.value; kept.save(); });
  act("save").addEventListener("click", save);
  act("clear").addEventListener("click", clear);
  act("read").addEventListener("click", function () { chooser.click(); });
  chooser.addEventListener("change", function () {
    var chosen = chooser.files[0];
    if (chosen) chosen.text().then(function (text) { take(chosen.name, text); chooser.value = ""; });
  });
  act("read-steps").addEventListener("click", enter);
  act("leave").addEventListener("click", leave);
  window.addEventListener("hashchange", followed);
  document.addEventListener("keydown", pressed);
  watchHolds();
})();
