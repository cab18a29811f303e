package signoff

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"unicode/utf8"

	"yokeline/lettering/source"
)

// Limits on what is read: each far above any real answer.
const (
	mostBytes   = 8 << 20
	mostPlayers = 20_000
)

const askAgain = "ask the coach to send the saved file again, as it is"

// Read reads a sign-off file. The fault says what is wrong with it and where: a
// file that is cut short, is no sign-off at all, or was changed after it was
// saved. The name is only used in messages. Whether the answer is one to this
// order is for Check to say.
func Read(name string, data []byte) (*Answer, source.Faults) {
	one := func(line, column int, message, hint string) (*Answer, source.Faults) {
		if !utf8.Valid(data) {
			return nil, source.Faults{{Place: source.Place{File: name}, Message: message, Hint: hint}}
		}
		return nil, source.Faults{source.NewFile(name, string(data)).Fault(line, column, 1, message, hint)}
	}
	switch {
	case len(data) > mostBytes:
		return nil, source.Faults{{Place: source.Place{File: name}, Message: "too large for a sign-off", Hint: askAgain}}
	case len(bytes.TrimSpace(data)) == 0:
		return one(1, 1, "the file is empty", askAgain)
	case !utf8.Valid(data):
		return one(1, 1, "this is no sign-off file", askAgain)
	}
	var a Answer
	d := json.NewDecoder(bytes.NewReader(bytes.TrimPrefix(data, []byte("\ufeff"))))
	d.DisallowUnknownFields()
	if err := d.Decode(&a); err != nil {
		line, column := placeOf(data, d.InputOffset(), err)
		return one(line, column, wrongJSON(err), askAgain)
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		line, column := at(data, d.InputOffset())
		return one(line, column, "there is more after the end of the answer", askAgain)
	}
	if faults := a.sound(name); len(faults) > 0 {
		return nil, faults
	}
	return &a, nil
}

// sound finds what a file that can be read may still have wrong with it.
func (a *Answer) sound(name string) source.Faults {
	var out source.Faults
	add := func(format string, args ...any) {
		out = append(out, source.Fault{Place: source.Place{File: name}, Message: fmt.Sprintf(format, args...), Hint: askAgain})
	}
	if a.Yokeline != Format {
		add("this is no sign-off file: it does not begin with yokeline: %q", Format)
		return out
	}
	if len(a.Fingerprint) != 64 {
		add("the fingerprint has %d characters and not 64", len(a.Fingerprint))
	}
	if len(a.Players) > mostPlayers {
		add("more players than an order may have")
		return out
	}
	for i, p := range a.Players {
		if p.Row != i+1 {
			add("player %d of the answer is of row %d", i+1, p.Row)
		}
		if p.Answer != Right && p.Answer != Note && p.Answer != Open {
			add("row %d: %q is no answer", p.Row, p.Answer)
		}
	}
	if len(out) == 0 && a.Seal != a.SealOf() {
		add("the file was changed or damaged after it was saved: its seal is broken")
	}
	return out
}

func wrongJSON(err error) string {
	var wrong *json.UnmarshalTypeError
	var broken *json.SyntaxError
	switch {
	case errors.Is(err, io.ErrUnexpectedEOF):
		return "the file is cut short"
	case errors.As(err, &wrong):
		return fmt.Sprintf("%s is not what a sign-off has there", wrong.Field)
	case errors.As(err, &broken):
		return "this is no sign-off file, or it is damaged here"
	}
	return "this is no sign-off file of this version: it has a field that is not known"
}

func placeOf(data []byte, offset int64, err error) (line, column int) {
	var broken *json.SyntaxError
	var wrong *json.UnmarshalTypeError
	switch {
	case errors.Is(err, io.ErrUnexpectedEOF):
		offset = int64(len(data))
	case errors.As(err, &broken):
		offset = broken.Offset - 1
	case errors.As(err, &wrong):
		offset = wrong.Offset - 1
	}
	return at(data, offset)
}

// at returns the line and the column, in characters, of a byte.
func at(data []byte, offset int64) (line, column int) {
	before := data[:min(max(offset, 0), int64(len(data)))]
	line = bytes.Count(before, []byte("\n")) + 1
	return line, utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:]) + 1
}

// Write returns the answer as a file, with its seal set.
func (a Answer) Write() ([]byte, error) {
	a.Yokeline = Format
	a.Seal = a.SealOf()
	var out bytes.Buffer
	encoder := json.NewEncoder(&out)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", " ")
	err := encoder.Encode(a)
	return out.Bytes(), err
}
