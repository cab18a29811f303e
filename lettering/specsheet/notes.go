package specsheet

import (
	"fmt"
	"slices"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/source"
)

// A measure this far from the generic one is likely another measure or another
// unit. Small ones differ more between makers and are not doubted. Common
// practice, no source.
const (
	muchUnder = 0.60
	muchOver  = 1.60
	doubted   = 150.0 // mm: generic measures from here up
)

// doubt notes measures that are far from the generic ones.
func (r *reader) doubt(cut garment.Cut, size garment.Size, figures []garment.Figure) {
	_, generic, err := garment.Standard(cut, size)
	if err != nil {
		return
	}
	for i, f := range figures {
		v, given := r.sheet.given[key{cut, size, f.Measure}]
		share := f.MM / generic[i].MM
		if !given || generic[i].MM < doubted || share > muchUnder && share < muchOver {
			continue
		}
		r.sheet.notes = append(r.sheet.notes, Note{At: v.cell.at, Cut: cut,
			Message: fmt.Sprintf("%s of %s is %s, and about %.0f mm is usual", f.Measure, size, v.as, generic[i].MM),
			Remedy:  "look whether it is the measure all round, or in another unit"})
	}
}

// fills records the measures of a size that the generic table gave.
func (s *Sheet) fills(cut garment.Cut, size garment.Size) {
	if names := s.Filled(cut, size); len(names) > 0 {
		s.filled = append(s.filled, fill{cut, size, names})
	}
}

// Filled returns the measures of a cut in a size that the sheet does not give and
// the generic table does, in the order of the table: all of them for a size that
// the sheet leaves out, none for an unknown cut.
func (s *Sheet) Filled(cut garment.Cut, size garment.Size) []string {
	var out []string
	worked := s.worked(cut, size)
	for _, name := range garment.MeasureNames(cut) {
		if _, given := s.given[key{cut, size, name}]; !given && name != worked {
			out = append(out, name)
		}
	}
	return out
}

// fillNotes tells what was filled: sizes with the same gaps in one note.
func (s *Sheet) fillNotes(cut garment.Cut) []Note {
	var out []Note
	var told []fill
	for _, f := range s.filled {
		if f.cut != cut || slices.ContainsFunc(told, func(t fill) bool { return slices.Equal(t.measures, f.measures) }) {
			continue
		}
		told = append(told, f)
		var sizes []garment.Size
		for _, g := range s.filled {
			if g.cut == cut && slices.Equal(g.measures, f.measures) {
				sizes = append(sizes, g.size)
			}
		}
		out = append(out, Note{At: source.Place{File: s.file}, Cut: cut,
			Message: fmt.Sprintf("%s of %s: not in the sheet, taken from the generic table", and(f.measures), sizeWords(sizes)),
			Remedy:  "add what the maker gives"})
	}
	return out
}

// sizeWords lists sizes with each group said once: youth M and L, adult S.
func sizeWords(sizes []garment.Size) string {
	var groups []string
	for i := 0; i < len(sizes); {
		var letters []string
		group := sizes[i].Group
		for ; i < len(sizes) && sizes[i].Group == group; i++ {
			letters = append(letters, sizes[i].Letter)
		}
		groups = append(groups, string(group)+" "+and(letters))
	}
	return strings.Join(groups, ", ")
}

// and joins words: a, b and c.
func and(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}

// goesWith holds a size that the sheet leaves out against the sizes beside it.
func (s *Sheet) goesWith(cut garment.Cut, size garment.Size, figures []garment.Figure) error {
	if s.Has(cut, size) {
		return nil
	}
	for _, near := range s.sizes[cut] {
		if near.Group != size.Group {
			continue
		}
		others, err := s.Figures(cut, near)
		if err != nil {
			return err
		}
		small, large, below, above := near, size, others, figures
		if near.Compare(size) > 0 {
			small, large, below, above = size, near, figures, others
		}
		for i := range below {
			if above[i].MM < below[i].MM-same {
				return fmt.Errorf("%s is not in %s, and the generic %s does not go with %s: it would fall from %s in %s to %s in %s; add %s to the sheet",
					size, s.file, below[i].Measure, near, s.say(cut, small, below[i].Measure, below[i].MM), small,
					s.say(cut, large, below[i].Measure, above[i].MM), large, size)
			}
		}
	}
	return nil
}
