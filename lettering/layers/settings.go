package layers

import (
	"fmt"
	"strings"
)

// basis marks every figure of this package.
const basis = "common practice, no source"

// Settings are what a shop may set for its own machines and materials. Begin
// with Default. Lengths are mm.
type Settings struct {
	// Knockout cuts away what another film covers, but for the overlap; else each
	// film is backed in full by the one under it.
	Knockout    bool
	Overlap     float64 // of knocked-out film under the film above it
	Ease        float64 // radius of inner corners of film and of cut contours
	TwillEase   float64 // radius of inner corners of twill
	WeedBorder  float64 // from the piece to the weed border, and the margin of what has none
	Contour     float64 // from the print to the cut contour round it
	Trap        float64 // of a separation under the colour printed before it
	Choke       float64 // of white under the colours on it
	StitchInset float64 // of the stitch line inside the edge of twill
	MarkGap     float64 // from the piece to its registration marks
	CutName     string  // of the spot colour of lines that are cut
}

// Value is one length of Settings with the range that it may be set within, mm.
type Value struct {
	Name              string
	MM, Least, Most   float64
	Meaning, Evidence string // Evidence is where default and range come from
}

// Default returns the settings used when a shop says nothing: all of them
// common practice, no source.
func Default() Settings {
	return Settings{
		Overlap: 2, Ease: 0.25, TwillEase: 1, WeedBorder: 8, Contour: 1.75, Trap: 0.4, Choke: 0.2,
		StitchInset: 1, MarkGap: 3, CutName: string(CutContour),
	}
}

// field is a length of the settings.
type field struct {
	name        string
	at          *float64
	least, most float64
	meaning     string
}

func (s *Settings) fields() []field {
	return []field{
		{"overlap", &s.Overlap, 1.5, 3, "how far a knocked-out film reaches under the film above it"},
		{"ease", &s.Ease, 0, 1, "radius of inner corners of film, so that the blade turns and the corner does not tear"},
		{"twill ease", &s.TwillEase, 0, 3, "radius of inner corners of twill"},
		{"weed border", &s.WeedBorder, 5, 10, "from the piece to the line it is weeded within"},
		{"contour", &s.Contour, 1.5, 2, "from the edge of the print to the cut round it"},
		{"trap", &s.Trap, 0.25, 0.5, "how far a separation reaches under the colour printed before it"},
		{"choke", &s.Choke, 0.1, 0.3, "how far white stays inside the colours on it"},
		{"stitch inset", &s.StitchInset, 0.5, 3, "from the edge of twill to the line it is sewn along"},
		{"mark gap", &s.MarkGap, 1, 10, "from the piece to its registration marks"},
	}
}

// Values lists the lengths in a fixed order.
func (s Settings) Values() []Value {
	var out []Value
	for _, f := range s.fields() {
		out = append(out, Value{f.name, *f.at, f.least, f.most, f.meaning, basis})
	}
	return out
}

// Set sets the length of that name, in mm. An unknown name is an error that
// lists the names, one outside its range gives the range.
func (s *Settings) Set(name string, mm float64) error {
	var names []string
	for _, f := range s.fields() {
		names = append(names, f.name)
		if f.name != name {
			continue
		}
		if err := f.check(mm); err != nil {
			return err
		}
		*f.at = mm
		return nil
	}
	return fmt.Errorf("setting %q is not known: use %s", name, strings.Join(names, ", "))
}

// Check returns an error that names the first setting outside its range.
func (s Settings) Check() error {
	for _, f := range s.fields() {
		if err := f.check(*f.at); err != nil {
			return err
		}
	}
	if strings.TrimSpace(s.CutName) == "" {
		return fmt.Errorf("the spot colour of cut lines has no name: call it %s, or as the cutter's software does", CutContour)
	}
	return nil
}

func (f field) check(mm float64) error {
	if mm >= f.least && mm <= f.most {
		return nil
	}
	return fmt.Errorf("%s of %g mm: set it from %g to %g mm", f.name, mm, f.least, f.most)
}
