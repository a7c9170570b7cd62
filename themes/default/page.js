// Kindnesses only: the page is whole without this. Ticks and readings are kept on this device, the rod shows
// the step in hand and the steps done, and a drawing can fill the screen.
(function () {
  "use strict";
  var store = null;
  try { store = window.localStorage; store.getItem("x"); } catch (e) { store = null; }
  var page = "kept:" + location.pathname + ":";

  function each(selector, act) { Array.prototype.forEach.call(document.querySelectorAll(selector), act); }

  function recall(input) {
    var kept = store && store.getItem(page + input.dataset.keep);
    if (kept === null || kept === undefined) return;
    if (input.type === "checkbox") input.checked = kept === "1"; else input.value = kept;
  }

  function keep(event) {
    var input = event.target;
    if (!store || !input.dataset || !input.dataset.keep) return;
    store.setItem(page + input.dataset.keep, input.type === "checkbox" ? (input.checked ? "1" : "0") : input.value);
    showDone();
  }

  function showDone() {
    each(".rod a", function (link) {
      var step = document.getElementById(link.hash.slice(1));
      var boxes = step ? step.querySelectorAll(".ticks input") : [];
      var done = boxes.length > 0 && Array.prototype.every.call(boxes, function (box) { return box.checked; });
      link.parentNode.classList.toggle("done", done);
    });
  }

  function follow() {
    if (!("IntersectionObserver" in window)) { document.documentElement.classList.remove("scripted"); return; }
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
      var place = document.getElementById(id);
      if (place) watcher.observe(place);
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
    var root = document.documentElement, worker = navigator.serviceWorker;
    if (!worker || !root.dataset.worker || root.hasAttribute("data-preview") || !/^https?:$/.test(location.protocol)) return;
    worker.register(root.dataset.worker).then(function () { return worker.ready; }).then(function (ready) {
      var answer = new MessageChannel();
      answer.port1.onmessage = function (event) { root.dataset.offline = event.data; };
      ready.active.postMessage({ opened: location.href }, [answer.port2]);
    }).catch(function () { root.dataset.offline = "failed"; });
  }

  if ("HTMLDialogElement" in window) each("[data-enlarge]", offerFullScreen);
  document.documentElement.classList.add("scripted");
  each("[data-keep]", recall);
  document.addEventListener("change", keep);
  showDone();
  follow();
  stay();
})();
