// Keeps the pages that were opened on this device, with what they need, for where there is no signal.
// PUBLISHED stands above this text: the version of the site, its common files, each page with what goes
// with it, and the page shown for one that was never opened.
(function () {
  "use strict";
  var scope = self.registration.scope, family = "kept " + scope + " ";
  var mine = family + PUBLISHED.version, PATIENCE = 4000, lent = {};

  function address(name) { return new URL(name, scope).href; }
  function nameOf(url) { return url.split(/[?#]/)[0].slice(scope.length).replace(/(^|\/)$/, "$1index.html"); }
  function known(name) { return Object.prototype.hasOwnProperty.call(PUBLISHED.pages, name); }
  function familyNames() {
    return caches.keys().then(function (names) { return names.filter(function (name) { return name.startsWith(family); }); });
  }

  function keep(names) {
    return caches.open(mine).then(function (cache) {
      return cache.addAll(names.map(function (name) { return new Request(address(name), { cache: "no-cache" }); }));
    });
  }

  function withCompanions(names) {
    return names.filter(known).reduce(function (all, name) { return all.concat(name, PUBLISHED.pages[name]); }, []);
  }

  function held(names) {
    return Promise.all(names.map(function (name) {
      return caches.open(name).then(function (cache) { return cache.keys(); });
    })).then(function (lists) {
      return [].concat.apply([], lists).map(function (request) { return nameOf(request.url); });
    });
  }

  function others() {
    return familyNames().then(function (names) { return names.filter(function (name) { return name !== mine; }); });
  }

  // What an earlier version kept is fetched anew, page by page. A page that cannot be had now is let go:
  // an old sheet must not pass for the one in force.
  function takeOver() {
    return Promise.all([others().then(held), held([mine])]).then(function (lists) {
      var wanted = lists[0].filter(function (name, place) {
        return known(name) && lists[0].indexOf(name) === place && lists[1].indexOf(name) < 0;
      });
      return wanted.reduce(function (before, name) {
        return before.then(function () { return keep(withCompanions([name])).catch(function () {}); });
      }, Promise.resolve());
    });
  }

  self.addEventListener("install", function (event) {
    self.skipWaiting();
    event.waitUntil(keep(PUBLISHED.common.concat(withCompanions(["index.html"]))).then(takeOver));
  });

  // Once more, for a page that the earlier version kept in the meantime; only then does the old go.
  self.addEventListener("activate", function (event) {
    event.waitUntil(takeOver().then(others).then(function (names) {
      return Promise.all(names.map(function (name) { return caches.delete(name); }));
    }).then(function () { return self.clients.claim(); }));
  });

  self.addEventListener("message", function (event) {
    var name = nameOf(String(event.data && event.data.opened));
    var port = event.ports[0];
    if (!known(name)) return;
    event.waitUntil(keep(withCompanions([name])).then(
      function () { return "kept"; }, function () { return "failed"; }
    ).then(function (came) { if (port) port.postMessage(lent[name] ? "lent" : came); }));
  });

  // A page that was lent says so, for it may no longer be the one in force.
  function lend(name) {
    return caches.open(mine).then(function (cache) { return cache.match(address(name)); }).then(function (found) {
      if (found) lent[name] = true;
      return found;
    });
  }

  function kept(name, request) {
    return lend(name).then(function (found) {
      if (found || request.mode !== "navigate") return found;
      return new Response(PUBLISHED.unopened, { status: 503, headers: { "Content-Type": "text/html; charset=utf-8" } });
    });
  }

  // What the browser stored on its own is not trusted without asking, for it may be older than what was kept.
  function asked(request) {
    var how = { cache: "no-cache", credentials: "same-origin", redirect: request.redirect };
    return fetch(new Request(request.url, how));
  }

  // What is published now comes first, since an old sheet can mislead; what was kept serves where the
  // network fails or keeps the reader waiting.
  self.addEventListener("fetch", function (event) {
    var request = event.request;
    if (request.method !== "GET" || !request.url.startsWith(scope)) return;
    var name = nameOf(request.url), network = asked(request), answered = false;
    function done() { answered = true; }
    delete lent[name];
    network.then(done, done);
    var late = new Promise(function (resolve) { setTimeout(resolve, PATIENCE); }).then(function () {
      return answered ? network : lend(name).then(function (found) { return found || network; });
    });
    event.respondWith(Promise.race([network, late]).catch(function () {
      return kept(name, request).then(function (found) { return found || Response.error(); });
    }));
  });
})();
