// Package signoff holds what a coach answers to a proof: one answer a player,
// one choice a question, and a name and a date under exactly one fingerprint. It
// reads the file that the proof page saves, refuses one that is damaged or
// belongs to another order, and turns what the coach asked for into a list for
// the shop.
//
// The seal of a file finds damage and hasty editing. It is no signature in the
// sense of cryptography: whoever wants to forge an answer can compute it anew.
package signoff

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strconv"
	"strings"
)

// Format is what the first field of a sign-off file says.
const Format = "sign-off 1"

// Answer is the content of a sign-off file.
type Answer struct {
	Yokeline    string   `json:"yokeline"` // Format
	Fingerprint string   `json:"fingerprint"`
	Team        string   `json:"team"`
	Order       string   `json:"order"` // the shop's order number, may be empty
	Revision    string   `json:"revision"`
	Players     []Player `json:"players"` // every player of the proof, in roster order
	Choices     []Choice `json:"choices"` // those made, in the order of the questions
	Known       []Known  `json:"known"`   // rules that the coach knows to be broken
	Signed      *Signed  `json:"signed"`  // nil for notes without a signature
	Seal        string   `json:"seal"`
}

// What a coach says of one player.
const (
	Right = "right"
	Note  = "note" // something is off
	Open  = "open" // not looked at
)

// Player is the answer about one player. Name, number and size repeat what the
// proof showed.
type Player struct {
	Row    int    `json:"row"` // counted from 1
	Name   string `json:"name"`
	Number string `json:"number"`
	Size   string `json:"size"`
	Answer string `json:"answer"` // Right, Note or Open
	About  string `json:"about"`  // of a note: spelling, number, size, or empty
	Note   string `json:"note"`   // in the coach's words
}

// Choice is the way that was chosen for a question.
type Choice struct {
	Question string `json:"question"` // "4 back name"
	Letter   string `json:"letter"`   // D
	Way      string `json:"way"`      // two lines
}

// Known is a broken rule that the coach was told of and lets stand.
type Known struct {
	Rule string `json:"rule"`
	What string `json:"what"` // as it stood above the signature
}

// Signed is who signed, and on which day: 2027-02-01, from the coach's own
// device.
type Signed struct {
	Name string `json:"name"`
	Date string `json:"date"`
}

// SealOf returns the seal that the answer should bear: SHA-256, in small
// hexadecimal digits, over every other field in the order of the file, each
// written as its length in bytes, a colon and itself, so that no two answers
// give the same text. A signature that is missing counts as two empty fields.
func (a *Answer) SealOf() string {
	var t sealed
	t.add(a.Yokeline, a.Fingerprint, a.Team, a.Order, a.Revision)
	t.add(strconv.Itoa(len(a.Players)))
	for _, p := range a.Players {
		t.add(strconv.Itoa(p.Row), p.Name, p.Number, p.Size, p.Answer, p.About, p.Note)
	}
	t.add(strconv.Itoa(len(a.Choices)))
	for _, c := range a.Choices {
		t.add(c.Question, c.Letter, c.Way)
	}
	t.add(strconv.Itoa(len(a.Known)))
	for _, k := range a.Known {
		t.add(k.Rule, k.What)
	}
	signed := Signed{}
	if a.Signed != nil {
		signed = *a.Signed
	}
	t.add(signed.Name, signed.Date)
	sum := sha256.Sum256([]byte(t.text.String()))
	return hex.EncodeToString(sum[:])
}

type sealed struct{ text strings.Builder }

func (s *sealed) add(fields ...string) {
	for _, f := range fields {
		fmt.Fprintf(&s.text, "%d:%s", len(f), f)
	}
}
