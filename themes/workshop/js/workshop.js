// Keeps ticks and readings in this browser, counts progress and judges readings.
// The guide is whole without it; what it adds to a page, it makes itself.
(function () {
  "use strict";

  var root = document.documentElement;
  var prefix = "guidegen:" + root.dataset.key + ":";

  // Storage may be closed to pages opened from disk; then nothing is kept.
  function load(name) {
    try { return localStorage.getItem(prefix + name); } catch (closed) { return null; }
  }

  function save(name, value) {
    try {
      if (value) localStorage.setItem(prefix + name, value);
      else localStorage.removeItem(prefix + name);
    } catch (closed) { /* nothing is kept */ }
  }

  function all(selector, within) {
    return Array.prototype.slice.call((within || document).querySelectorAll(selector));
  }

  function fill(sentence, values) {
    return sentence.replace(/\{(\w+)\}/g, function (whole, name) {
      return name in values ? values[name] : whole;
    });
  }

  function make(tag, style, text) {
    var element = document.createElement(tag);
    if (style) element.className = style;
    if (text) element.textContent = text;
    return element;
  }

  function button(text, act) {
    var made = make("button", "button", text);
    made.type = "button";
    made.addEventListener("click", act);
    return made;
  }

  // A status line and a button that clears what it counts.
  function counter(box, fields, clear, recount) {
    var line = make("p", "count");
    line.setAttribute("role", "status");
    box.appendChild(line);
    box.appendChild(button(box.dataset.clear, function () {
      if (!window.confirm(box.dataset.sure)) return;
      fields.forEach(function (field) { clear(field); save(field.dataset.keep, ""); });
      recount();
    }));
    box.hidden = false;
    return line;
  }

  function keepTicks() {
    var ticks = all("input[type=checkbox][data-keep]");
    ticks.forEach(function (tick) {
      tick.checked = load(tick.dataset.keep) === "done";
      tick.addEventListener("change", function () {
        save(tick.dataset.keep, tick.checked ? "done" : "");
        recount();
      });
    });
    var recount = countProgress(ticks);
    recount();
  }

  // In one file every sheet is on this page; a count looks at its own sheet alone.
  function within(box, fields) {
    var sheet = box.closest("[data-sheet]") || document;
    return fields.filter(function (field) { return sheet.contains(field); });
  }

  // One bulb a step; it lights when the step is done.
  function countProgress(every) {
    var box = document.querySelector("[data-progress]");
    if (!box) return markTicks;
    var ticks = within(box, every);
    var bulbs = make("div", "bulbs");
    bulbs.setAttribute("aria-hidden", "true");
    ticks.forEach(function () { bulbs.appendChild(make("i")); });
    box.appendChild(bulbs);
    var onward = make("a", "button");
    var line = counter(box, ticks, function (tick) { tick.checked = false; }, recount);
    box.insertBefore(onward, box.lastChild);
    tellWhere(box, ticks, bulbs.children);
    function markTicks() {
      every.forEach(function (tick) {
        var owner = tick.closest(".step, tr");
        if (owner) owner.classList.toggle("done", tick.checked);
      });
    }
    function recount() {
      var done = ticks.filter(function (tick, at) {
        bulbs.children[at].classList.toggle("lit", tick.checked);
        return tick.checked;
      }).length;
      markTicks();
      pointOnward(ticks.filter(function (tick) { return !tick.checked; })[0]);
      line.textContent = fill(box.dataset.say, { done: done, all: ticks.length });
    }
    // A long page: the link leads to the first step that is not done.
    function pointOnward(open) {
      onward.hidden = !open;
      if (!open) return;
      var step = open.closest(".step");
      onward.href = "#" + step.id;
      onward.textContent = fill(box.dataset.next, { number: step.dataset.number });
    }
    return recount;
  }

  // Which step is being read: the last one whose head has come up to the middle of the window.
  function tellWhere(box, ticks, bulbs) {
    var steps = ticks.map(function (tick) { return tick.closest(".step"); });
    var line = make("p", "here-line", "\u00a0");
    box.insertBefore(line, box.querySelector(".count"));
    var at = -1;
    function look() {
      var found = -1;
      steps.forEach(function (step, number) {
        if (step.getBoundingClientRect().top < window.innerHeight / 2) found = number;
      });
      if (found === at) return;
      if (at >= 0) bulbs[at].classList.remove("here");
      at = found;
      if (at >= 0) bulbs[at].classList.add("here");
      line.textContent = at < 0 ? "\u00a0" : fill(box.dataset.here, {
        number: steps[at].dataset.number,
        title: steps[at].querySelector("h3").lastChild.textContent.trim()
      });
    }
    var waiting = false;
    window.addEventListener("scroll", function () {
      if (waiting) return;
      waiting = true;
      window.requestAnimationFrame(function () { waiting = false; look(); });
    }, { passive: true });
    look();
  }

  // A number as people type it: a comma or a point, a unit behind it or none.
  var TYPED = /^([+-]?(?:\d+(?:\.(\d*))?|\.(\d+)))\s*[a-zA-Z\u00b5\u03bc\u03a9\u2126%]*$/;

  // The printed range is rounded: half of the reading's last digit is let pass,
  // yet never more than a twentieth of the range.  Outside of it a reading is
  // borderline, and out of range only beyond the wider limits.
  function judge(text, row) {
    if (!text.trim()) return "";
    var match = TYPED.exec(text.trim().replace(/[\u2212\u2013]/g, "-").replace(",", "."));
    if (!match) return "unread";
    var value = Number(match[1]);
    var decimals = (match[2] || match[3] || "").length;
    var low = Number(row.low), high = Number(row.high);
    var slack = Math.min(0.5001 * Math.pow(10, -decimals), 0.05 * (high - low));
    if (value < low - slack) return value < Number(row.outLow) - slack ? "low" : "edgeLow";
    if (value > high + slack) return value > Number(row.outHigh) + slack ? "high" : "edgeHigh";
    return "in";
  }

  function keepReadings() {
    var box = document.querySelector("[data-tally]");
    if (!box) return;
    var fields = all(".reading input");
    var line = counter(box, fields, function (field) { field.value = ""; }, recount);
    function recount() {
      var verdicts = fields.map(function (field) {
        var row = field.closest(".reading");
        var verdict = judge(field.value, row.dataset);
        row.dataset.verdict = verdict.replace(/[A-Z]/, function (letter) { return "-" + letter.toLowerCase(); });
        row.querySelector("output").textContent = verdict ? box.dataset[verdict] : "";
        return verdict;
      });
      line.textContent = fill(box.dataset.say, {
        filled: verdicts.filter(Boolean).length,
        all: fields.length,
        out: verdicts.filter(function (verdict) { return verdict === "low" || verdict === "high"; }).length
      });
    }
    fields.forEach(function (field) {
      field.value = load(field.dataset.keep) || "";
      field.addEventListener("input", function () {
        save(field.dataset.keep, field.value);
        recount();
      });
    });
    recount();
  }

  function selectText(element) {
    var range = document.createRange();
    range.selectNodeContents(element);
    var selection = window.getSelection();
    selection.removeAllRanges();
    selection.addRange(range);
  }

  // The older way works where the clipboard is closed to pages opened from disk.
  function copy(element, done) {
    function olderWay() {
      selectText(element);
      if (document.execCommand("copy")) done();
    }
    if (!navigator.clipboard) olderWay();
    else navigator.clipboard.writeText(element.textContent).then(done, olderWay);
  }

  function offerCopies() {
    all("pre[data-copy]").forEach(function (file) {
      var made = button(file.dataset.copy, function () {
        copy(file, function () { made.textContent = file.dataset.copied; });
      });
      made.classList.add("copy");
      made.setAttribute("aria-live", "polite");
      file.parentNode.insertBefore(made, file);
    });
  }

  // In one file the sheet is chosen first, so that it prints alone.
  function offerPrinting() {
    all("[data-print]").forEach(function (list) {
      list.parentNode.insertBefore(button(list.dataset.print, function () {
        var sheet = list.closest("[data-sheet]");
        if (sheet) location.hash = sheet.id;
        window.print();
      }), list.nextSibling);
    });
  }

  keepTicks();
  keepReadings();
  offerCopies();
  offerPrinting();
})();
