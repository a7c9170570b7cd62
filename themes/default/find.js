// Searches the whole site on the reader's device, and narrows the list of methods to a stage, a tool or a hazard.
// The index comes as a script when the field is first used, so that it also opens from a file; every word shown
// stands in the page.
(function () {
  "use strict";
  var form = document.querySelector(".find");
  if (!form) return;
  var field = form.querySelector("input"), told = form.querySelector("[role=status]"), list = form.querySelector("ol");
  var MOST = 20, AROUND = 70, entries = null, asked = false;
  var LETTERS = { "\u00f8": "o", "\u00df": "ss", "\u00e6": "ae", "\u0153": "oe", "\u0142": "l", "\u0111": "d", "\u00f0": "d", "\u00fe": "th" };

  function plain(text) {
    return text.normalize("NFD").replace(/[\u0300-\u036f]/g, "").toLowerCase()
      .replace(/[\u00f8\u00df\u00e6\u0153\u0142\u0111\u00f0\u00fe]/g, function (letter) { return LETTERS[letter]; });
  }
  function words(text) { return plain(text).split(/[^\p{L}\p{N}]+/u).filter(Boolean); }

  function prepare(index) {
    return index.parts.map(function (part) {
      var page = index.pages[part[0]];
      var text = part[3].map(function (at) { return index.sentences[at]; }).join(" ");
      return { page: page[0], title: page[1], anchor: part[1], heading: part[2], text: text, share: part[4] ? 0.25 : 1,
        fields: [[words(part[2]), 8], [words(page[1]), 4], [words(text), 1]] };
    });
  }

  // A whole word counts twice what the beginning of one does; a word repeated counts ever less.
  function worth(entry, word) {
    return entry.fields.reduce(function (sum, field) {
      var whole = 0, begun = 0;
      field[0].forEach(function (one) { if (one === word) whole += 1; else if (one.startsWith(word)) begun += 1; });
      return sum + field[1] * (2 * Math.log2(1 + whole) + Math.log2(1 + begun));
    }, 0);
  }

  function ranked(wanted) {
    return entries.map(function (entry, place) {
      var worths = wanted.map(function (word) { return worth(entry, word); });
      var all = worths.every(function (each) { return each > 0; });
      return { entry: entry, place: place, worth: all ? entry.share * worths.reduce(function (a, b) { return a + b; }, 0) : 0 };
    }).filter(function (found) { return found.worth > 0; });
  }

  function nearestFirst(a, b) { return b.worth - a.worth || a.place - b.place; }

  // Each further part of a page counts less, so that no page buries the others: a guide its statement least of all.
  function shared(found) {
    var before = {};
    return found.sort(nearestFirst).map(function (one) {
      var page = one.entry.page, earlier = before[page] || 0;
      before[page] = earlier + 1;
      return { entry: one.entry, place: one.place, worth: one.worth / (1 + earlier / 2) };
    }).sort(nearestFirst);
  }

  function excerpt(text, wanted) {
    var pieces = text.split(/([^\p{L}\p{N}]+)/u), out = document.createElement("p"), first = -1;
    function hit(piece) { var one = plain(piece); return one && wanted.some(function (word) { return one.startsWith(word); }); }
    pieces.some(function (piece, place) { if (hit(piece)) first = place; return first >= 0; });
    var from = Math.max(0, first - 20), length = 0;
    if (from > 0) out.append("\u2026 ");
    for (var at = from; at < pieces.length && length < 2 * AROUND; at += 1) {
      if (hit(pieces[at])) { var mark = document.createElement("mark"); mark.textContent = pieces[at]; out.append(mark); } else out.append(pieces[at]);
      length += pieces[at].length;
    }
    if (at < pieces.length) out.append(" \u2026");
    return out;
  }

  function row(found, wanted) {
    var item = document.createElement("li"), link = document.createElement("a"), entry = found.entry;
    link.href = entry.page + (entry.anchor ? "#" + entry.anchor : "");
    link.textContent = entry.heading || entry.title;
    var under = document.createElement("p");
    under.className = "small";
    under.textContent = entry.title;
    item.append(link, under, excerpt(entry.text, wanted));
    return item;
  }

  function say(sentence, values) {
    told.textContent = sentence.replace(/\{(\w+)\}/g, function (whole, name) { return values[name]; });
  }

  function search() {
    var wanted = words(field.value);
    list.textContent = "";
    if (!wanted.length) { told.textContent = ""; return; }
    if (!entries) { load(); return; }
    var found = shared(ranked(wanted)), shown = found.slice(0, MOST);
    shown.forEach(function (one) { list.append(row(one, wanted)); });
    if (!found.length) say(form.dataset.none, { words: field.value.trim() });
    else say(found.length > MOST ? form.dataset.first : form.dataset.found, { count: found.length, shown: shown.length });
  }

  function load() {
    if (asked) return;
    asked = true;
    var script = document.createElement("script");
    script.src = form.dataset.index;
    script.onload = function () { entries = prepare(self.SEARCHED); search(); };
    script.onerror = function () { asked = false; say(form.dataset.missing, {}); };
    document.head.append(script);
  }

  field.disabled = false;
  field.addEventListener("focus", load);
  field.addEventListener("input", search);
  field.addEventListener("keydown", function (event) { if (event.key === "Escape") { field.value = ""; search(); } });
  form.addEventListener("submit", function (event) {
    event.preventDefault();
    search();
    var first = list.querySelector("a");
    if (first) first.focus();
  });
})();

(function () {
  "use strict";
  var form = document.querySelector(".sieve");
  if (!form) return;
  function all(within, selector) { return Array.prototype.slice.call(within.querySelectorAll(selector)); }
  var chosen = all(form, "select"), methods = all(document, ".method"), stages = all(document, ".stage");

  // The choices are what the lists further down already tell.
  function choices(list) {
    if (list === "stage") return stages.map(function (stage) { return [stage.id, stage.querySelector("h2").textContent]; });
    return all(document, "#" + list + " > ul > li").map(function (one) { return [one.id, one.querySelector(".used").textContent]; });
  }

  function offer(select) {
    select.append(new Option(form.dataset.all, ""));
    choices(select.dataset.of).forEach(function (choice) { select.append(new Option(choice[1], choice[0])); });
  }

  function meets(method, key) {
    return !key || method.closest(".stage").id === key || (method.dataset.met || "").split(" ").indexOf(key) >= 0;
  }

  function narrow() {
    var shown = methods.filter(function (method) {
      method.hidden = !chosen.every(function (select) { return meets(method, select.value); });
      return !method.hidden;
    });
    stages.forEach(function (stage) { stage.hidden = !all(stage, ".method:not([hidden])").length; });
    var told = chosen.some(function (select) { return select.value; }) ? form.dataset.shown : "";
    form.querySelector("[role=status]").textContent = told.replace("{count}", shown.length).replace("{all}", methods.length);
  }

  chosen.forEach(offer);
  form.hidden = false;
  form.addEventListener("change", narrow);
  form.addEventListener("submit", function (event) { event.preventDefault(); });
  narrow();
})();
