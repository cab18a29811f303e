// The proof's page at work: one answer a player, one choice a question, one
// signature. Everything stays on this device until the saved file is sent.
(function () {
  "use strict";
  var order = JSON.parse(byID("order").textContent);
  var cards = all(".card"), questions = all(".question"), ticks = all(".ruler i");
  var key = "sign-off " + order.fingerprint;
  var state = fresh();
  var zoomed = -1;

  // fresh is the state of a page that nobody has answered yet. numbers holds
  // what was written for a player who is to take another number.
  function fresh() {
    return { began: today(), answers: order.players.map(function (p) { return p.signed ? { answer: "right" } : null; }), choices: {}, numbers: {}, name: "", agreed: false, signed: null, noted: false };
  }

  // keep writes the answers to this browser's own store, where there is one.
  function keep() {
    try { localStorage.setItem(key, JSON.stringify(state)); } catch (e) { /* private window, or no store for files */ }
  }

  // recall reads the answers of an earlier visit; false when there are none, or
  // when they do not belong to this order.
  function recall() {
    try {
      var old = JSON.parse(localStorage.getItem(key));
      if (!old || !Array.isArray(old.answers) || old.answers.length !== order.players.length) { return false; }
      state = Object.assign(fresh(), old);
      return started();
    } catch (e) { return false; }
  }
  function started() {
    return state.answers.some(function (a, i) { return a && !order.players[i].signed; }) || Object.keys(state.choices).length > 0 || !!state.signed;
  }

  // The way that was chosen for question i, or null.
  function chosen(i) {
    var q = order.questions[i], letter = state.choices[q.id];
    return q.ways.filter(function (w) { return w.letter === letter; })[0] || null;
  }
  function newNumber(i, w) { return (state.numbers[order.questions[i].id + " " + w.letter] || "").trim(); }

  // isOpen says whether question i still waits. One without any way out is for
  // the shop to settle.
  function isOpen(i) {
    var q = order.questions[i], w = chosen(i);
    if (!q.open || q.ways.length === 0) { return false; }
    return !w || (w.player >= 0 && newNumber(i, w) === "");
  }

  // changes counts the choices that need a new proof.
  function changes() {
    return order.questions.filter(function (q, i) {
      var w = chosen(i);
      return q.ways.length === 0 || (w && (w.renews || (w.player >= 0 && newNumber(i, w) !== "")));
    }).length;
  }

  // tally counts what is answered and what is not.
  function tally() {
    var t = { open: 0, notes: changes(), choices: 0 };
    state.answers.forEach(function (a) { if (!a) { t.open++; } else if (a.answer === "note") { t.notes++; } });
    order.questions.forEach(function (q, i) { if (isOpen(i)) { t.choices++; } });
    t.ready = t.open === 0 && t.choices === 0;
    return t;
  }

  // known lists the rules that stay broken as things are chosen.
  function known() {
    return order.known.filter(function (k) { return state.choices[k.question] === k.letter; });
  }

  // show brings the whole page into the state.
  function show() {
    var t = tally();
    cards.forEach(showCard);
    questions.forEach(showQuestion);
    cards.forEach(function (card, i) { swap(card, drawingFor(i)); });
    ticks.forEach(function (tick, i) { tick.className = state.answers[i] ? state.answers[i].answer : ""; });
    showBar(t);
    showSigning(t);
    showPaper();
  }

  function showCard(card, i) {
    var a = state.answers[i], said = one(".said", card), writing = card.classList.contains("is-writing");
    card.classList.toggle("is-right", !!a && a.answer === "right" && !writing);
    one(".ask", card).hidden = !!a || writing;
    one(".writing", card).hidden = !writing;
    said.hidden = !a || writing;
    if (a) {
      one(".tick", said).className = "tick " + a.answer;
      one(".words", said).textContent = inWords(a);
      one(".change", said).hidden = order.players[i].signed;
    }
  }

  // showQuestion ticks the chosen way and shows it on the cards of the players.
  function showQuestion(box, i) {
    var q = order.questions[i], w = chosen(i);
    all("input[type=radio]", box).forEach(function (radio) { radio.checked = !!w && radio.value === w.letter; });
    all(".new-number", box).forEach(function (field) {
      var kept = state.numbers[q.id + " " + field.dataset.letter] || "";
      if (field.value !== kept) { field.value = kept; }
    });
    q.players.forEach(function (p) {
      var link = one(".chosen[href='#question-" + i + "']", cards[p]);
      if (link) { link.textContent = w ? "you chose " + w.letter + ", " + w.title.toLowerCase() + (w.player >= 0 ? " " + newNumber(i, w) : "") : q.open ? "choose above" : "see above"; }
    });
  }

  // drawingFor is what was chosen for player p, where it is drawn on the side
  // that the card shows.
  function drawingFor(p) {
    var found = null;
    order.questions.forEach(function (q, i) {
      var w = chosen(i);
      if (!found && w && q.shows && q.players.indexOf(p) >= 0) {
        found = one("input[value='" + w.letter + "'] ~ .picture svg", questions[i]);
      }
    });
    return found;
  }

  // swap shows a chosen drawing on a card, or the player's own again. All
  // drawings have one scale and one origin, so only what they use differs.
  function swap(card, drawing) {
    var svg = one(".picture > .shirt", card);
    if (!svg) { return; }
    if (!svg.own) { svg.own = svg.innerHTML; svg.ownCloser = svg.dataset.closer; }
    var wanted = drawing ? drawing.innerHTML : svg.own;
    if (svg.innerHTML !== wanted) { svg.innerHTML = wanted; }
    svg.dataset.closer = drawing ? drawing.dataset.closer : svg.ownCloser;
  }

  function showBar(t) {
    var text = (order.players.length - t.open) + " of " + order.players.length + " looked at";
    if (t.notes) { text += " · " + count(t.notes, "note"); }
    if (t.choices) { text += " · " + t.choices + " to choose"; }
    setText("count", text);
    setText("next", !t.ready ? "Next one" : t.notes ? "To your notes" : "To sign");
  }

  function showSigning(t) {
    var still = [], n = order.players.length;
    if (t.open) { still.push(count(t.open, "player") + " to look at"); }
    if (t.choices) { still.push(count(t.choices, "choice") + " to make"); }
    var done = !!state.signed || state.noted;
    var text = "All " + n + " are right" + (order.questions.length ? " and every choice is made" : "") + ". You can sign.";
    if (n === 1) { text = "It is right" + (order.questions.length ? " and every choice is made" : "") + ". You can sign."; }
    if (still.length) {
      text = "Still open: " + still.join(", ") + ".";
    } else if (t.notes) {
      text = "You left " + count(t.notes, "note") + ". We change that and send a new proof, so there is nothing to sign yet.";
    }
    setText("state", done ? "" : text);
    byID("form").hidden = done;
    byID("done").hidden = !done;
    byID("all-label").hidden = t.notes > 0;
    byID("all").checked = state.agreed;
    if (byID("who").value !== state.name) { byID("who").value = state.name; }
    setText("date", spoken(state.signed ? state.signed.date : today()));
    setText("save", t.notes ? "Save my notes" : "Sign and save my answer");
    byID("save").disabled = !t.ready || (!t.notes && (!state.agreed || state.name.trim() === ""));
    list("known", done || still.length || t.notes ? [] : known());
    document.body.classList.toggle("signed-on", done);
    all("input", byID("decide") || document.createElement("p")).forEach(function (i) { i.disabled = done; });
    if (done) { showDone(); }
  }

  function showDone() {
    var p = byID("signed"), strong = document.createElement("b");
    p.textContent = "";
    if (state.signed) {
      strong.textContent = "Signed by " + state.signed.name + " on " + spoken(state.signed.date);
      p.append(strong, " for fingerprint " + order.short + ". Send the saved file back to the shop.");
    } else {
      strong.textContent = "Your notes are saved.";
      p.append(strong, " Send the saved file back to the shop. You get a new proof to sign.");
    }
    byID("copy").value = file();
  }

  // showPaper fills in the answer as it is printed.
  function showPaper() {
    all(".paper-decide .made").forEach(function (cell, i) {
      var q = order.questions[i], w = chosen(i);
      cell.classList.toggle("chose", !!w);
      cell.dataset.letter = w ? w.letter : "";
      cell.dataset.detail = w && w.detail ? ", " + w.detail : "";
      cell.textContent = w ? w.title + (w.player >= 0 ? " " + newNumber(i, w) : "") :
        q.ways.length === 0 ? "to be settled with the shop" : q.open ? "no choice yet" : "as it stands";
    });
    all(".paper-roster li").forEach(function (row, i) {
      var a = state.answers[i], words = a ? inWords(a) : "not looked at";
      one(".tick", row).className = "tick " + (a ? a.answer : "");
      one(".made", row).textContent = words;
      row.classList.toggle("long", words.length > 14);
    });
    var p = byID("paper-signed"), strong = document.createElement("b");
    p.textContent = "";
    list("paper-known", state.signed ? known() : []);
    if (!state.signed) { p.textContent = "Not signed yet."; return; }
    strong.textContent = "Signed by " + state.signed.name + " on " + spoken(state.signed.date);
    p.append(strong, " for fingerprint " + order.short + ".");
  }

  // answer gathers what the file says, in the order of its fields.
  function answer() {
    var renamed = {};
    var choices = [];
    order.questions.forEach(function (q, i) {
      var w = chosen(i);
      if (!w || isOpen(i)) { return; }
      choices.push({ question: q.id, letter: w.letter, way: w.kind });
      if (w.player >= 0) { renamed[w.player] = newNumber(i, w); }
    });
    var players = order.players.map(function (p, i) {
      var a = state.answers[i] || { answer: "open", about: "", note: "" };
      a = { answer: a.answer, about: a.about || "", note: a.note || "" };
      if (i in renamed) {
        a = { answer: "note", about: "number", note: "takes number " + renamed[i] + (a.note ? "; " + a.note : "") };
      }
      return { row: i + 1, name: p.name, number: p.number, size: p.size, answer: a.answer, about: a.about, note: a.note };
    });
    var out = {
      yokeline: order.format, fingerprint: order.fingerprint, team: order.team, order: order.order, revision: order.revision,
      players: players, choices: choices, known: state.signed ? known().map(function (k) { return { rule: k.rule, what: k.what }; }) : [], signed: state.signed
    };
    out.seal = seal(out);
    return out;
  }
  function file() { return JSON.stringify(answer(), null, 1) + "\n"; }

  // save hands the file to the browser.
  function save() {
    var a = document.createElement("a");
    a.href = URL.createObjectURL(new Blob([file()], { type: "application/json" }));
    a.download = order.file;
    document.body.append(a);
    a.click();
    a.remove();
    setTimeout(function () { URL.revokeObjectURL(a.href); }, 60000);
  }

  // set gives player i an answer, or takes it back with null.
  function set(i, answer) {
    state.answers[i] = answer;
    cards[i].classList.remove("is-writing");
    changed();
  }
  function changed() { keep(); show(); }

  // write opens the note of player i.
  function write(i, about) {
    var a = state.answers[i];
    cards[i].classList.add("is-writing");
    one("textarea", cards[i]).value = a && a.answer === "note" ? a.note : "";
    press(i, a && a.answer === "note" ? a.about : about);
    show();
    one("textarea", cards[i]).focus();
  }
  function press(i, about) {
    all(".quick button", cards[i]).forEach(function (b) { b.setAttribute("aria-pressed", String(b.value === about)); });
  }

  cards.forEach(function (card, i) {
    var right = one(".right", card), picture = one("button.picture", card), text = one("textarea", card);
    if (right) { right.onclick = function () { set(i, { answer: "right" }); one(".change", card).focus({ preventScroll: true }); }; }
    if (picture) { picture.onclick = function () { zoom(i); }; }
    one(".off", card).onclick = function () { write(i, order.players[i].sized ? "" : "size"); };
    one(".change", card).onclick = function () {
      if (state.answers[i] && state.answers[i].answer === "note") { write(i, ""); return; }
      set(i, null);
      one(".ask button", card).focus({ preventScroll: true });
    };
    all(".quick button", card).forEach(function (b) {
      b.onclick = function () { press(i, b.getAttribute("aria-pressed") === "true" ? "" : b.value); text.focus(); };
    });
    one(".keep", card).onclick = function () {
      var note = text.value.trim(), about = one(".quick [aria-pressed=true]", card);
      if (!note) { text.focus(); return; }
      set(i, { answer: "note", about: about ? about.value : "", note: note });
      one(".change", card).focus({ preventScroll: true });
    };
    one(".leave", card).onclick = function () { set(i, null); one(".ask button", card).focus({ preventScroll: true }); };
  });

  questions.forEach(function (box, i) {
    var q = order.questions[i];
    all("input[type=radio]", box).forEach(function (radio) {
      radio.onchange = function () {
        state.choices[q.id] = radio.value;
        changed();
        var field = one(".new-number[data-letter='" + radio.value + "']", box);
        if (field && !field.value) { field.focus(); }
      };
    });
    all(".new-number", box).forEach(function (field) {
      field.oninput = function () {
        state.numbers[q.id + " " + field.dataset.letter] = field.value;
        state.choices[q.id] = field.dataset.letter;
        changed();
      };
    });
  });

  // bring scrolls to an element and gives it, or a control in it, the focus.
  function bring(element, control) {
    element.scrollIntoView({ block: "center" });
    (control || element).focus({ preventScroll: true });
  }

  // next goes to the first open choice, then to the first open player, then to
  // the end.
  function next() {
    var q = order.questions.findIndex(function (_, i) { return isOpen(i); });
    if (q >= 0) { bring(questions[q], one("input", questions[q])); return; }
    var p = state.answers.indexOf(null);
    if (p >= 0) { bring(cards[p], one(".ask button", cards[p])); return; }
    bring(byID("signing"), state.signed || state.noted ? byID("again") : byID("who"));
  }

  // zoom shows player i larger: the lettering, then the whole garment.
  function zoom(i) {
    var card = cards[i], svg = one(".picture > .shirt", card), other = one(".picture > .other", card);
    var closer = svg.cloneNode(true), whole = svg.cloneNode(true);
    zoomed = i;
    closer.setAttribute("viewBox", svg.dataset.closer);
    whole.setAttribute("viewBox", svg.dataset.whole);
    byID("zoom-title").textContent = one(".who", card).textContent.replace(/\s+/g, " ").trim();
    byID("zoom-closer").replaceChildren(closer);
    byID("zoom-whole").replaceChildren(whole);
    if (other) {
      other = other.cloneNode(true);
      other.removeAttribute("hidden");
      byID("zoom-whole").append(other);
    }
    byID("zoom-before").disabled = beside(-1) < 0;
    byID("zoom-after").disabled = beside(1) < 0;
    if (!byID("zoom").open) { byID("zoom").showModal(); }
  }
  // beside finds the next player one way who has a drawing; -1 for none.
  function beside(step) {
    for (var i = zoomed + step; i >= 0 && i < cards.length; i += step) {
      if (one(".picture > .shirt", cards[i])) { return i; }
    }
    return -1;
  }
  function unzoom() {
    byID("zoom").close();
  }
  byID("zoom-close").onclick = unzoom;
  byID("zoom-before").onclick = function () { zoom(beside(-1)); };
  byID("zoom-after").onclick = function () { zoom(beside(1)); };
  byID("zoom").onclick = function (e) { if (e.target === byID("zoom")) { unzoom(); } };
  byID("zoom").addEventListener("close", function () { one(".picture", cards[zoomed]).focus({ preventScroll: false }); });

  byID("next").onclick = next;
  byID("who").oninput = function () { state.name = byID("who").value; changed(); };
  byID("all").onchange = function () { state.agreed = byID("all").checked; changed(); };
  byID("form").onsubmit = function (e) {
    e.preventDefault();
    var t = tally();
    if (byID("save").disabled) { return; }
    state.signed = t.notes ? null : { name: state.name.trim(), date: today() };
    state.noted = t.notes > 0;
    save();
    changed();
    byID("done").focus({ preventScroll: true });
  };
  byID("again").onclick = save;
  byID("print").onclick = function () { window.print(); };
  byID("reopen").onclick = function () {
    state.signed = null;
    state.noted = false;
    state.agreed = false;
    changed();
    bring(byID("signing"), byID("who"));
  };
  byID("go-on").onclick = function () { byID("began").hidden = true; next(); };
  byID("start-again").onclick = function () {
    state = fresh();
    byID("began").hidden = true;
    changed();
    byID("next").focus({ preventScroll: true });
  };

  document.documentElement.classList.add("on");
  document.body.classList.add("on");
  if (recall() && !state.signed && !state.noted) {
    byID("began-text").textContent = "You began on " + spoken(state.began).replace(/ \d+$/, "") + ". Go on, or start again.";
    byID("began").hidden = false;
  }
  show();
})();
