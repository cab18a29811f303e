// Package pressing knows how lettering is pressed: starting points by method
// and fibre, the heat that each fibre stands, and what to watch for. It checks a
// plan of presses before anyone warms a platen.
//
// Every figure is a starting point. The supplier's data sheet and local rules go
// before all of it, and a test piece is pressed first. Nothing here is legal
// advice.
package pressing

import (
	"bytes"
	_ "embed" // the starting points
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"yokeline/lettering/source"
)

//go:embed data/settings.csv
var startingSettings []byte

//go:embed data/ceilings.csv
var startingCeilings []byte

// Standing is said on every ticket.
const Standing = "Starting point only. Follow the supplier's data sheet and local rules. Press a test piece first."

// Basis is what the embedded settings rest on.
const Basis = "common practice, no source"

// Setting is how one kind of lettering is pressed on some fibres. Temperatures
// are at the face of the cloth under the cover sheet, in degrees Celsius, and
// times in seconds; each is a range, and the words are for people.
type Setting struct {
	Methods      []string // ids of package order, and emblem
	Variant      string   // low temperature, blocker; empty where there is one only
	Fibres       []string // it is made for
	FromC, ToC   float64
	FromS, ToS   float64
	Pressure     string // light, medium, firm: gauge figures do not carry over from press to press
	PrePress     string
	Peel, Second string
	Cover        bool
}

// Blocker reports a film whose backing holds dye back.
func (s Setting) Blocker() bool { return strings.Contains(s.Variant, "blocker") }

// Name is the method with its variant.
func (s Setting) Name() string {
	if s.Variant == "" {
		return s.Methods[0]
	}
	return s.Methods[0] + ", " + s.Variant
}

// Ceiling is the heat that a fibre stands, degrees Celsius.
type Ceiling struct {
	Fibre        string
	State        string  // pale or dyed, of polyester; empty where it makes no difference
	Warn, Stop   float64 // above which to warn, and not to press
	WarnS        float64 // seconds above which to warn; 0 for none
	BlockerLifts bool    // a blocker may go past Warn up to Stop
	Why, Basis   string
}

// Shop is what a shop presses with: its settings and the ceilings.
type Shop struct {
	Settings []Setting
	Ceilings []Ceiling
	Basis    string // of the settings
}

// Starting returns the starting points that come with the program.
func Starting() (*Shop, error) {
	settings, faults := readSettings("settings.csv", startingSettings)
	ceilings, more := readCeilings("ceilings.csv", startingCeilings)
	if err := append(faults, more...).Err(); err != nil {
		return nil, err
	}
	return &Shop{Settings: settings, Ceilings: ceilings, Basis: Basis}, nil
}

// Read reads a shop's own settings, a CSV file with the columns of the
// embedded one; the ceilings of the fibres stay. Every fault is reported with
// its line and column.
func Read(name string, data []byte) (*Shop, source.Faults) {
	shop, err := Starting()
	if err != nil {
		return nil, source.Faults{{Message: err.Error()}}
	}
	settings, faults := readSettings(name, data)
	if len(faults) > 0 {
		return nil, faults
	}
	shop.Settings, shop.Basis = settings, "the shop's own "+name
	return shop, nil
}

// For returns the settings of a method for cloth that holds all the fibres, the
// coolest first; none when the method is for other cloth.
func (s *Shop) For(method string, c Cloth) []Setting {
	var out []Setting
	for _, set := range s.Settings {
		if slices.Contains(set.Methods, method) && set.takes(c) {
			out = append(out, set)
		}
	}
	slices.SortStableFunc(out, func(a, b Setting) int { return int(a.FromC - b.FromC) })
	return out
}

// takes reports whether the setting is for one of the fibres that the cloth is
// mostly made of.
func (s Setting) takes(c Cloth) bool {
	for _, p := range c.Parts {
		if p.Percent >= mostly && slices.Contains(s.Fibres, p.Fibre) {
			return true
		}
	}
	return false
}

// mostly is the share of a fibre, percent, from which a setting for it counts:
// half of a blend.
const mostly = 50

const mostBytes = 1 << 20

// rows reads a CSV file with a head of known columns.
type rows struct {
	name   string
	file   *source.File
	reader *csv.Reader
	at     map[string]int
	faults source.Faults
}

func newRows(name string, data []byte, columns []string) *rows {
	r := &rows{name: name, at: map[string]int{}}
	if _, line, column, bad := source.BadByte(data); bad || len(data) > mostBytes {
		r.faults = source.Faults{{Place: source.Place{File: name, Line: line, Column: column}, Message: "not a CSV file in UTF-8 of at most 1 MiB", Hint: "save it again as CSV UTF-8"}}
		return r
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	r.file, r.reader = source.NewFile(name, string(data)), csv.NewReader(bytes.NewReader(data))
	head, err := r.reader.Read()
	if err != nil {
		r.fault(1, 1, "there is no line of column names", "the first line must be "+strings.Join(columns, ","))
		return r
	}
	for i, h := range head {
		r.at[strings.TrimSpace(strings.ToLower(h))] = i
	}
	for _, c := range columns {
		if _, ok := r.at[c]; !ok {
			r.fault(1, 1, fmt.Sprintf("the column %s is missing", c), "the first line must be "+strings.Join(columns, ","))
		}
	}
	return r
}

func (r *rows) fault(line, column int, message, hint string) {
	r.faults = append(r.faults, r.file.Fault(line, column, 1, message, hint))
}

// each calls use for every row; none after a fault in the head.
func (r *rows) each(use func(row)) source.Faults {
	if len(r.faults) > 0 {
		return r.faults
	}
	for {
		cells, err := r.reader.Read()
		var wrong *csv.ParseError
		switch {
		case errors.Is(err, io.EOF):
			return r.faults
		case errors.As(err, &wrong):
			r.fault(wrong.Line, max(wrong.Column, 1), wrong.Err.Error(), "every line needs as many values as the first")
			return r.faults
		}
		use(row{r, cells})
	}
}

// row is one line of the file.
type row struct {
	*rows
	cells []string
}

func (r row) text(column string) string { return strings.TrimSpace(r.cells[r.at[column]]) }

func (r row) list(column string) []string {
	var out []string
	for _, v := range strings.Split(r.text(column), "|") {
		if v = strings.TrimSpace(v); v != "" {
			out = append(out, v)
		}
	}
	if len(out) == 0 {
		r.wrong(column, "is empty", "write at least one")
	}
	return out
}

func (r row) wrong(column, what, hint string) {
	line, at := r.reader.FieldPos(r.at[column])
	r.fault(line, at, column+" "+what, hint)
}

// number reads a figure within bounds; an empty cell is 0 where that is
// allowed.
func (r row) number(column string, low, high float64, empty bool) float64 {
	text := r.text(column)
	if text == "" && empty {
		return 0
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || !(v >= low && v <= high) {
		r.wrong(column, fmt.Sprintf("%q is not a figure from %g to %g", text, low, high), "write a plain figure")
	}
	return v
}

func (r row) yes(column string) bool {
	text := r.text(column)
	if text != "yes" && text != "no" {
		r.wrong(column, fmt.Sprintf("%q is neither yes nor no", text), "write yes or no")
	}
	return text == "yes"
}

var settingColumns = []string{"method", "variant", "fibres", "from_c", "to_c", "from_s", "to_s", "pressure", "pre_press", "peel", "second_press", "cover"}

// The hottest platen and the longest press that are taken for a figure meant.
const (
	hottest = 230
	longest = 120
)

func readSettings(name string, data []byte) ([]Setting, source.Faults) {
	var out []Setting
	faults := newRows(name, data, settingColumns).each(func(r row) {
		s := Setting{
			Methods: r.list("method"), Variant: r.text("variant"), Fibres: r.list("fibres"),
			FromC: r.number("from_c", 50, hottest, false), ToC: r.number("to_c", 50, hottest, false),
			FromS: r.number("from_s", 1, longest, false), ToS: r.number("to_s", 1, longest, false),
			Pressure: r.text("pressure"), PrePress: r.text("pre_press"), Peel: r.text("peel"), Second: r.text("second_press"), Cover: r.yes("cover"),
		}
		if s.FromC > s.ToC {
			r.wrong("to_c", "is below from_c", "write the lower temperature first")
		}
		if s.FromS > s.ToS {
			r.wrong("to_s", "is below from_s", "write the shorter time first")
		}
		for _, f := range s.Fibres {
			if !slices.Contains(Fibres(), f) {
				r.wrong("fibres", fmt.Sprintf("%q is not a fibre that is known", f), "one of "+strings.Join(Fibres(), ", "))
			}
		}
		out = append(out, s)
	})
	return out, faults
}

func readCeilings(name string, data []byte) ([]Ceiling, source.Faults) {
	var out []Ceiling
	faults := newRows(name, data, []string{"fibre", "state", "warn_c", "stop_c", "warn_s", "blocker_lifts", "why", "basis"}).each(func(r row) {
		out = append(out, Ceiling{
			Fibre: r.text("fibre"), State: r.text("state"), Warn: r.number("warn_c", 50, hottest, false), Stop: r.number("stop_c", 50, hottest, false),
			WarnS: r.number("warn_s", 1, longest, true), BlockerLifts: r.yes("blocker_lifts"), Why: r.text("why"), Basis: r.text("basis"),
		})
	})
	return out, faults
}
