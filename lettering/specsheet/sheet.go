// Package specsheet reads the spec sheet of a garment's maker: the finished
// measures of each size, saved from a spreadsheet as separated values. A sheet
// may have one row a measure of a size, one row a size, or one row a measure with
// a column a size; it may give some of the measures only, and the generic table
// fills the rest, which is told. The measures together are held against the rules
// that every garment obeys, so that a slip (a girth for a half, centimetres for
// inches) is found before anything is cut.
package specsheet

import (
	"cmp"
	"fmt"
	"slices"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/source"
)

// Defaults are what the rows of a sheet mean that do not say it themselves.
type Defaults struct {
	Cut   garment.Cut   // of rows without a cut; empty: each row must say it
	Group garment.Group // of sizes without a group; empty: adult
}

// Note is something about a sheet that does not make it unusable.
type Note struct {
	At              source.Place
	Cut             garment.Cut // whom it concerns; empty: the sheet
	Message, Remedy string
}

// Sheet holds the measures of one maker. It is safe for concurrent use.
type Sheet struct {
	file   string
	given  map[key]value
	sizes  map[garment.Cut][]garment.Size // that have a measure, in order
	notes  []Note
	filled []fill
}

// key is one measure of one garment.
type key struct {
	cut     garment.Cut
	size    garment.Size
	measure string
}

// value is a measure as the sheet gives it.
type value struct {
	mm   float64
	as   string // as it was written, with its unit: 42 in, halved
	unit length.Unit
	cell cell
}

// fill tells which measures of a size the generic table gave.
type fill struct {
	cut      garment.Cut
	size     garment.Size
	measures []string
}

// Read reads a sheet. file is its name in messages. With any fault the sheet is
// nil, and every fault is returned in file order.
func Read(file string, data []byte, d Defaults) (*Sheet, source.Faults) {
	if d.Group == "" {
		d.Group = garment.Adult
	}
	r := &reader{defaults: d, sheet: &Sheet{file: file, given: map[key]value{}, sizes: map[garment.Cut][]garment.Size{}}}
	if r.open(file, data); len(r.faults) == 0 {
		r.read()
	}
	if len(r.faults) == 0 {
		r.settle()
	}
	if len(r.faults) > 0 {
		r.faults.Sort()
		return nil, r.faults
	}
	slices.SortStableFunc(r.sheet.notes, func(a, b Note) int { return a.At.Compare(b.At) })
	return r.sheet, nil
}

// File returns the name that the sheet was read under.
func (s *Sheet) File() string { return s.file }

// Notes returns what was noticed about the sheet and the cut, in file order,
// what was filled from the generic table last.
func (s *Sheet) Notes(cut garment.Cut) []Note {
	var out []Note
	for _, n := range s.notes {
		if n.Cut == "" || n.Cut == cut {
			out = append(out, n)
		}
	}
	return append(out, s.fillNotes(cut)...)
}

// Sizes returns the sizes for which the sheet gives a measure of the cut, in the
// order of sizes.
func (s *Sheet) Sizes(cut garment.Cut) []garment.Size { return slices.Clone(s.sizes[cut]) }

// Has reports whether the sheet gives any measure of the cut in the size.
func (s *Sheet) Has(cut garment.Cut, size garment.Size) bool {
	return slices.Contains(s.sizes[cut], size)
}

// Garment returns a cut in a size with the sheet's measures and, where it has
// none, the generic ones; Figures of the garment tell which is which. A size that
// the sheet leaves out is wholly generic, and an error where that does not go with
// the sizes beside it. Errors name an unknown cut or size.
func (s *Sheet) Garment(cut garment.Cut, size garment.Size) (*garment.Garment, error) {
	figures, err := s.Figures(cut, size)
	if err != nil {
		return nil, err
	}
	if err := s.goesWith(cut, size, figures); err != nil {
		return nil, err
	}
	return garment.FromFigures(cut, size, figures)
}

// Figures returns the measures of a cut in a size, each with what it rests on: the
// file and line of the sheet, or the basis of the generic table. Errors name an
// unknown cut or size.
func (s *Sheet) Figures(cut garment.Cut, size garment.Size) ([]garment.Figure, error) {
	_, generic, err := garment.Standard(cut, size)
	if err != nil {
		return nil, err
	}
	derived := s.straps(cut, size, generic)
	out := make([]garment.Figure, 0, len(generic))
	for _, f := range generic {
		switch v, ok := s.given[key{cut, size, f.Measure}]; {
		case ok:
			f = garment.Figure{Measure: f.Measure, MM: v.mm, Formula: v.as, Basis: fmt.Sprintf("%s, line %d", s.file, v.cell.at.Line)}
		case derived.Measure == f.Measure:
			f = derived
		default:
			f.Basis = fmt.Sprintf("generic, not in %s: %s", s.file, f.Basis)
		}
		out = append(out, f)
	}
	return out, nil
}

// straps works out the third of a tank's shoulder, neck and strap widths from the
// two that the sheet gives, or from one and the generic neck or strap; they hang
// together, so the generic third would contradict the sheet. The figure is zero
// where there is nothing to work out.
func (s *Sheet) straps(cut garment.Cut, size garment.Size, generic []garment.Figure) garment.Figure {
	at := func(name string) (float64, bool) {
		if v, ok := s.given[key{cut, size, name}]; ok {
			return v.mm, true
		}
		for _, f := range generic {
			if f.Measure == name {
				return f.MM, false
			}
		}
		return 0, false
	}
	shoulder, hasShoulder := at("shoulder width")
	neck, hasNeck := at("neck width")
	strap, hasStrap := at("strap width")
	basis := "worked out from " + s.file
	switch {
	case strap == 0 || !hasShoulder && !hasNeck && !hasStrap:
		return garment.Figure{}
	case !hasShoulder:
		return garment.Figure{Measure: "shoulder width", MM: neck + 2*strap, Formula: "neck width + 2 strap widths", Basis: basis}
	case !hasStrap:
		return garment.Figure{Measure: "strap width", MM: (shoulder - neck) / 2, Formula: "half of shoulder width - neck width", Basis: basis}
	case !hasNeck:
		return garment.Figure{Measure: "neck width", MM: shoulder - 2*strap, Formula: "shoulder width - 2 strap widths", Basis: basis}
	}
	return garment.Figure{}
}

// keep stores one measure.
func (s *Sheet) keep(k key, v value) {
	s.given[k] = v
	if list := s.sizes[k.cut]; !slices.Contains(list, k.size) {
		list = append(list, k.size)
		slices.SortFunc(list, garment.Size.Compare)
		s.sizes[k.cut] = list
	}
}

// cuts returns the cuts that the sheet has measures of, in a fixed order.
func (s *Sheet) cuts() []garment.Cut {
	var out []garment.Cut
	for cut := range s.sizes {
		out = append(out, cut)
	}
	slices.SortFunc(out, func(a, b garment.Cut) int { return cmp.Compare(a, b) })
	return out
}
