// The seal of a saved answer, as the shop's program reckons it.
var seal = (function () {
  "use strict";

  // seal is SHA-256 over all fields, each with its length in bytes before it.
  function seal(a) {
    var bytes = [], encoder = new TextEncoder();
    function add(text) {
      var field = encoder.encode(text);
      encoder.encode(field.length + ":").forEach(function (b) { bytes.push(b); });
      field.forEach(function (b) { bytes.push(b); });
    }
    [a.yokeline, a.fingerprint, a.team, a.order, a.revision, String(a.players.length)].forEach(add);
    a.players.forEach(function (p) { [String(p.row), p.name, p.number, p.size, p.answer, p.about, p.note].forEach(add); });
    add(String(a.choices.length));
    a.choices.forEach(function (c) { [c.question, c.letter, c.way].forEach(add); });
    add(String(a.known.length));
    a.known.forEach(function (k) { [k.rule, k.what].forEach(add); });
    [a.signed ? a.signed.name : "", a.signed ? a.signed.date : ""].forEach(add);
    return sha256(bytes);
  }

  // sha256 is the hash of FIPS 180-4, section 6.2. Browsers keep their own from
  // pages that are opened as files.
  function sha256(message) {
    var constants = primes(64), k = constants.map(function (p) { return fraction(Math.cbrt(p)); });
    var h = constants.slice(0, 8).map(function (p) { return fraction(Math.sqrt(p)); });
    var bytes = message.concat([0x80]), bits = message.length * 8;
    while (bytes.length % 64 !== 56) { bytes.push(0); }
    for (var s = 7; s >= 0; s--) { bytes.push(Math.floor(bits / Math.pow(256, s)) & 255); }
    for (var at = 0; at < bytes.length; at += 64) { block(h, k, bytes, at); }
    return h.map(function (v) { return ("0000000" + v.toString(16)).slice(-8); }).join("");
  }
  function block(h, k, bytes, at) {
    var w = [], v = h.slice(), i;
    for (i = 0; i < 64; i++) {
      if (i < 16) {
        w[i] = (bytes[at + 4 * i] << 24 | bytes[at + 4 * i + 1] << 16 | bytes[at + 4 * i + 2] << 8 | bytes[at + 4 * i + 3]) >>> 0;
      } else {
        var a = w[i - 15], b = w[i - 2];
        w[i] = (w[i - 16] + (turn(a, 7) ^ turn(a, 18) ^ a >>> 3) + w[i - 7] + (turn(b, 17) ^ turn(b, 19) ^ b >>> 10)) >>> 0;
      }
      var first = v[7] + (turn(v[4], 6) ^ turn(v[4], 11) ^ turn(v[4], 25)) + (v[4] & v[5] ^ ~v[4] & v[6]) + k[i] + w[i];
      var second = (turn(v[0], 2) ^ turn(v[0], 13) ^ turn(v[0], 22)) + (v[0] & v[1] ^ v[0] & v[2] ^ v[1] & v[2]);
      v = [(first + second) >>> 0, v[0], v[1], v[2], (v[3] + first) >>> 0, v[4], v[5], v[6]];
    }
    for (i = 0; i < 8; i++) { h[i] = (h[i] + v[i]) >>> 0; }
  }
  function turn(x, n) { return (x >>> n | x << 32 - n) >>> 0; }
  function fraction(x) { return Math.floor((x - Math.floor(x)) * 4294967296) >>> 0; }
  function primes(n) {
    var out = [];
    for (var p = 2; out.length < n; p++) {
      if (out.every(function (q) { return p % q !== 0; })) { out.push(p); }
    }
    return out;
  }

  return seal;
})();
