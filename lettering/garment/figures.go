package garment

import "fmt"

// MeasureNames returns the names of the measures that a cut has, as Figure
// names them: chest half, body length.
func MeasureNames(c Cut) []string { return required(c) }

// FromFigures returns a cut in a size with the measures of the figures, each of
// which keeps its own formula and basis: some from a maker's spec sheet, the
// others from the generic table. Errors name the measure that is missing, is not
// one of the cut's, or cannot be drawn.
func FromFigures(cut Cut, size Size, figures []Figure) (*Garment, error) {
	var m Measures
	given := map[string]Figure{}
	for _, f := range figures {
		field := m.field(f.Measure)
		if field == nil {
			return nil, fmt.Errorf("%s %s: %q is not a measure", cut, size, f.Measure)
		}
		*field, given[f.Measure] = f.MM, f
	}
	g, err := Custom(cut, size, m, "")
	if err != nil {
		return nil, err
	}
	for i := range g.figures {
		g.figures[i] = given[g.figures[i].Measure]
	}
	return g, nil
}
