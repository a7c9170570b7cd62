// Kindnesses only: the page is whole without this. Ticks and readings are kept on this device, the rod shows
// the step in hand and the steps done, and a drawing can fill the screen.
(function () {
  "use strict";
  var root = document.documentElement, store = null;
  try { store = window.localStorage; store.getItem("x"); } catch (e) { store = null; }

  function each(selector, act) { Array.prototype.forEach.call(document.querySelectorAll(selector), act); }
  function all(within, selector) { return Array.prototype.slice.call(within.querySelectorAll(selector)); }
  function fill(sentence, values) {
    return sentence.replace(/\{(\w+)\}/g, function (whole, name) { return values[name]; });
  }

  // What is ticked or written is kept under the mark of the part it stands in. The mark is made of the part's
  // words: a part that only moved keeps its ticks, and one whose words changed loses them and is named.
  var place = "kept:" + location.pathname, guide = root.dataset.content, parts = [], byMark = {};
  var notice = document.querySelector(".changed"), listeners = [];

  function titleOf(box) {
    var heading = box.querySelector(".step-title") || box.querySelector("h2, h3, h4, h5, h6");
    return heading ? heading.textContent : box.id;
  }

  function nameOf(id, title) {
    return /^step-/.test(id) ? fill(notice.dataset.step, { number: id.slice(5), title: title }) : title;
  }

  each("[data-mark]", function (box) {
    var mark = box.dataset.mark;
    while (byMark[mark]) mark += "+";
    byMark[mark] = { box: box, mark: mark, id: box.id, title: titleOf(box), inputs: all(box, "[data-keep]") };
    parts.push(byMark[mark]);
  });

  function fresh() { return { format: 1, content: guide, name: "", at: "", parts: {}, left: [], old: [] }; }
  function bare(record) { return !Object.keys(record.ticks).length && !Object.keys(record.values).length && !record.note; }
  function record(mark) {
    var part = byMark[mark], records = kept.state.parts;
    if (!records[mark]) records[mark] = { id: part.id, title: part.title, ticks: {}, values: {}, note: "", seen: false };
    return records[mark];
  }

  function first(test) { return parts.filter(test)[0]; }

  // A part whose words changed is found again by its title, or else by its place. Its ticks never go over, and
  // its note only where the title is the same.
  function lose(lost) {
    var same = first(function (part) { return part.title === lost.title; });
    var now = same || first(function (part) { return part.id === lost.id && !kept.state.parts[part.mark]; });
    var ticks = Object.keys(lost.ticks).length + Object.keys(lost.values).length, to = same && lost.note && record(same.mark);
    if (to) to.note = to.note ? to.note + "\n" + lost.note : lost.note;
    kept.state.left.push({ id: now ? now.id : lost.id, title: lost.title, ticks: ticks, gone: !now, note: to ? "" : lost.note });
  }

  function settle() {
    var state = kept.state;
    Object.keys(state.parts).forEach(function (mark) {
      var lost = state.parts[mark];
      if (byMark[mark]) { lost.id = byMark[mark].id; return; }
      delete state.parts[mark];
      if (!bare(lost)) lose(lost);
    });
    if (state.content !== guide && Object.keys(state.parts).some(function (mark) { return !bare(state.parts[mark]); })) state.moved = true;
    state.content = guide;
  }

  function read() {
    var text = store && store.getItem(place), told = null;
    try { told = text && JSON.parse(text); } catch (e) { told = null; }
    return told && told.format === 1 && told.parts && told.left && told.old ? told : fresh();
  }

  function save() {
    kept.refused = !store;
    try { if (store) store.setItem(place, JSON.stringify(kept.state)); } catch (e) { kept.refused = true; }
    listeners.forEach(function (listener) { listener(); });
  }

  function show() {
    parts.forEach(function (part) {
      var told = kept.state.parts[part.mark] || { ticks: {}, values: {} };
      part.inputs.forEach(function (input, n) {
        if (input.type === "checkbox") input.checked = n in told.ticks; else input.value = told.values[n] || "";
      });
    });
    showChanges();
    showDone();
    listeners.forEach(function (listener) { listener(); });
  }

  function row(left) {
    var item = document.createElement("li"), name = document.createElement(left.gone ? "strong" : "a");
    if (!left.gone) name.href = "#" + left.id;
    name.textContent = nameOf(left.id, left.title);
    item.append(name, " ", fill(left.gone ? notice.dataset.gone : notice.dataset.other, { ticks: left.ticks }));
    if (left.note) item.append(" ", fill(notice.dataset.note, { note: left.note }));
    return item;
  }

  function showChanges() {
    if (!notice) return;
    var state = kept.state, list = notice.querySelector("ul");
    notice.hidden = !state.left.length && !state.moved;
    notice.querySelector(".changed-none").hidden = state.left.length > 0;
    list.textContent = "";
    state.left.forEach(function (left) { list.append(row(left)); });
    parts.forEach(function (part) {
      part.box.classList.toggle("changed-part", state.left.some(function (left) { return !left.gone && left.id === part.id; }));
    });
  }

  function keep(event) {
    var input = event.target, part = input.dataset && input.dataset.keep !== undefined && partOf(input);
    if (!part) return;
    var told = record(part.mark), n = part.inputs.indexOf(input);
    if (input.type !== "checkbox") { if (input.value) told.values[n] = input.value; else delete told.values[n]; }
    else if (input.checked) told.ticks[n] = new Date().toISOString();
    else delete told.ticks[n];
    save();
    showDone();
  }

  function partOf(element) {
    var box = element.closest("[data-mark]");
    return first(function (part) { return part.box === box; });
  }

  function showDone() {
    each(".rod a", function (link) {
      var step = document.getElementById(link.hash.slice(1));
      var boxes = step ? all(step, ".ticks input") : [];
      var done = boxes.length > 0 && boxes.every(function (box) { return box.checked; });
      link.parentNode.classList.toggle("done", done);
    });
  }

  function follow() {
    if (!("IntersectionObserver" in window)) { root.classList.remove("scripted"); return; }
    var links = {};
    each(".rod a", function (link) { links[link.hash.slice(1)] = link; });
    var watcher = new IntersectionObserver(function (entries) {
      entries.forEach(function (entry) {
        var link = links[entry.target.id];
        if (!link) return;
        if (entry.isIntersecting) link.setAttribute("aria-current", "step"); else link.removeAttribute("aria-current");
      });
    }, { rootMargin: "-40% 0px -59% 0px" });
    Object.keys(links).forEach(function (id) {
      var target = document.getElementById(id);
      if (target) watcher.observe(target);
    });
  }

  // The drawing itself moves into the full-screen sheet and back, so that no id ever stands twice.
  function enlarge(room, opener) {
    var sheet = document.createElement("dialog"), shut = document.createElement("button");
    var table = document.createElement("div"), drawing = room.querySelector("svg");
    sheet.className = "full-screen";
    sheet.setAttribute("aria-label", room.dataset.name);
    shut.className = "button full";
    shut.textContent = room.dataset.close;
    table.className = "drawing-table";
    table.tabIndex = 0;
    table.appendChild(drawing);
    sheet.append(shut, table);
    document.body.appendChild(sheet);
    shut.addEventListener("click", function () { sheet.close(); });
    sheet.addEventListener("close", function () { room.insertBefore(drawing, room.firstChild); sheet.remove(); opener.focus(); });
    sheet.showModal();
  }

  function offerFullScreen(room) {
    var opener = document.createElement("button");
    opener.type = "button";
    opener.className = "button enlarge";
    opener.textContent = room.dataset.enlarge;
    opener.addEventListener("click", function () { enlarge(room, opener); });
    room.appendChild(opener);
  }

  // Once opened over the network, a page stays on the device; a file, or a page being written, does not.
  function stay() {
    var worker = navigator.serviceWorker;
    if (!worker || !root.dataset.worker || root.hasAttribute("data-preview") || !/^https?:$/.test(location.protocol)) return;
    worker.register(root.dataset.worker).then(function () { return worker.ready; }).then(function (ready) {
      var answer = new MessageChannel();
      answer.port1.onmessage = function (event) { root.dataset.offline = event.data; };
      ready.active.postMessage({ opened: location.href }, [answer.port2]);
    }).catch(function () { root.dataset.offline = "failed"; });
  }

  // What the scripts of one kind of page build on.
  var kept = self.KEPT = {
    parts: parts, state: fresh(), refused: !store, all: all, fill: fill, nameOf: nameOf, record: record, save: save,
    listen: function (listener) { listeners.push(listener); listener(); },
    take: function (state) { kept.state = state; settle(); save(); show(); },
    fresh: fresh
  };

  if ("HTMLDialogElement" in window) each("[data-enlarge]", offerFullScreen);
  root.classList.add("scripted");
  if (parts.length) {
    kept.state = read();
    settle();
    if (kept.state.left.length || kept.state.moved) save();
    show();
    document.addEventListener("input", keep);
    notice.querySelector("button").addEventListener("click", function () {
      kept.state.old = kept.state.old.concat(kept.state.left.filter(function (left) { return left.note; }));
      kept.state.left = [];
      delete kept.state.moved;
      save();
      show();
    });
    // Another window of the same guide has written: what it says holds here too.
    window.addEventListener("storage", function (event) { if (event.key === place) { kept.state = read(); show(); } });
  }
  follow();
  stay();
})();
