// Small tools of the page: finding elements, counting and dates in words.
"use strict";

function byID(id) { return document.getElementById(id); }
function one(selector, within) { return (within || document).querySelector(selector); }
function all(selector, within) { return Array.prototype.slice.call((within || document).querySelectorAll(selector)); }
function count(n, thing) { return n + " " + thing + (n === 1 ? "" : "s"); }

// today is the date of this device, as 2026-11-26.
function today() {
  var d = new Date();
  return d.getFullYear() + "-" + two(d.getMonth() + 1) + "-" + two(d.getDate());
}
function two(n) { return (n < 10 ? "0" : "") + n; }

// spoken turns 2026-11-26 into 26 Nov 2026.
function spoken(date) {
  var months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"], p = date.split("-");
  return Number(p[2]) + " " + months[Number(p[1]) - 1] + " " + p[0];
}

// mark returns the mark of a rule's result.
function mark(id) {
  var space = "http://www.w3.org/2000/svg", svg = document.createElementNS(space, "svg"), use = document.createElementNS(space, "use");
  svg.setAttribute("class", "result");
  svg.setAttribute("aria-hidden", "true");
  use.setAttribute("href", "#" + id);
  svg.append(use);
  return svg;
}

// list writes the rules that stay broken.
function list(id, rules) {
  var box = byID(id);
  box.textContent = "";
  rules.forEach(function (k) {
    var p = document.createElement("p"), words = document.createElement("span");
    p.className = "warn";
    words.textContent = k.what;
    p.append(mark("d-breaks-a-rule"), words);
    box.append(p);
  });
}

// inWords is an answer as the page shows it.
function inWords(a) { return a.answer === "right" ? "Right" : "“" + (a.about ? a.about + ": " : "") + a.note + "”"; }

// setText leaves a text alone that does not change, so that readers of the
// screen say only what is new.
function setText(id, text) {
  var e = byID(id);
  if (e.textContent !== text) { e.textContent = text; }
}

