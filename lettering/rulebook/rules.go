package rulebook

import (
	"fmt"
	"slices"
	"strings"
)

// Rules are the figures of a book that hold in one season. A nil figure is not
// known.
type Rules struct {
	ID, Body, Sport, Level, Edition string
	Season                          string // as it was asked for
	Category                        string // women, 12U ...; "" for everyone
	Numbers                         Numbers
	Positions                       []Position // those the book speaks of, in the order of Places
	Names                           Names
	Contrast                        Contrast
	Notes                           []*Figure // remarks, in the order of the file
	Figures                         []*Figure // every figure in force, in the order of the file
}

// Numbers says which numbers may be worn.
type Numbers struct {
	Min, Max        *Figure // Count
	Digits          *Figure // Is: the digits that may be used, "0-5" or "0-9"
	DigitsMax       *Figure // Count
	Only            *Figure // Is: a closed list, space separated
	Not             *Figure // Is: excluded numbers, space separated
	Zero            *Figure // Is: legal, illegal
	DoubleZero      *Figure // Is: legal, illegal
	LeadingZero     *Figure // Is: legal, illegal
	ZeroAndDouble   *Figure // Is: legal, illegal: 0 and 00 on one roster
	Same            *Figure // Is: as written, by value: when two numbers count as one
	Duplicates      *Figure // Is: none, two but not together, not together
	GoalkeepersOnly *Figure // Is: numbers kept for goalkeepers, space separated
	GoalkeeperFree  *Figure // yes: a goalkeeper needs no number
	Numerals        *Figure // Is: arabic
	Style           *Figure // Is: plain, gothic and the like, in the book's word
	Alike           *Figure // yes: front and back in the same style and colours
	Team            *Figure // yes, not the libero: one height and colour for all who play
}

// Position is what the book says about the number at one place.
type Position struct {
	Place string
	// Required is yes, no, recommended, forbidden, unstated, or "or shorts" and
	// "or front" where one of two places is enough.
	Required *Figure

	HeightMin, HeightMax, HeightExact *Figure
	HeightAbout, HeightAdvised        *Figure // HeightAdvised is a minimum that is recommended
	HeightIncludesBorder              *Figure // yes, no
	StrokeMin, StrokeMax, StrokeAbout *Figure
	StrokeIncludesBorder              *Figure // yes, no
	WidthMin                          *Figure // of each digit
	BlockMin                          [4]*Figure
	GapExact                          *Figure // between digits
	BorderMin, BorderMax              *Figure // of the whole trim around the number
	EachBorderMax                     *Figure
	BorderCountMax                    *Figure // Count
	ShadowMax                         *Figure
	ColoursMax                        *Figure // Count
	Centred                           *Figure // across, down, both
	BelowCollarMax                    *Figure
	UpperHalf                         *Figure // yes; "upper part" where no share is printed
	MatchesShirt                      *Figure // yes: the same number as on the shirt
}

// Names is what the book says about names.
type Names struct {
	Allowed                           *Figure // yes, no
	Required                          *Figure // yes, no, all or none
	HeightMin, HeightMax, HeightExact *Figure
	LongFrom                          *Figure // Count: letters from which a name is a long one
	LongHeight, ShortHeight           *Figure // exactly, of names that are long and of the others
	LongStroke, ShortStroke           *Figure // at least
	WidthMin, WidthMax                *Figure
	GapMin                            *Figure // from every letter to the number
	Side                              *Figure // above, below, either: of the number
	EndsLevel                         *Figure // yes: first and last letter stand on one level
	EndsClear                         *Figure // yes: that level does not reach into the height of the number
	Ground                            *Figure // yes: one colour behind the letters
	Straight                          *Figure // yes: no curve
	ColoursMax                        *Figure // Count
}

// Contrast is what the book says about colours.
type Contrast struct {
	// Body is yes where the body of the number itself must contrast with the
	// garment, "or border" where a border may do it instead.
	Body      *Figure
	BorderMin *Figure // the border that may do it instead
	Solid     *Figure // yes: the body of the number has one solid colour
	Border    *Figure // yes: a border stands out
	Ground    *Figure // yes: one colour behind the number
	Libero    *Figure // yes: the libero's jersey is unlike the team's
	// GroundDeltaLMax is the Ratio by which colours of the shirt behind the number
	// may differ in lightness.
	GroundDeltaLMax *Figure

	RatioMin  *Figure // Ratio: contrast ratio after WCAG
	DeltaLMin *Figure // Ratio: difference in lightness
}

// Position returns what the book says about a place, nil if nothing.
func (r *Rules) Position(place string) *Position {
	if r == nil {
		return nil
	}
	for i := range r.Positions {
		if r.Positions[i].Place == place {
			return &r.Positions[i]
		}
	}
	return nil
}

// In returns the figures that hold in a season: a year 2027, a school year
// 2027-28, or a date 2027-03-14. A bare year is the season that is played (or
// begins) in it; the exact day a rule changes on needs a date.
func (b *Book) In(season string) (*Rules, error) { return b.InFor(season, "") }

// InFor is In for a category that the book has figures of its own for, such
// as women or 12U. Where it has none the general figure holds.
func (b *Book) InFor(season, category string) (*Rules, error) {
	at, err := dayOf(season, b.Played)
	if err != nil {
		return nil, err
	}
	if known := b.Categories(); category != "" && !slices.Contains(known, category) {
		if len(known) == 0 {
			return nil, fmt.Errorf("rule book %s has no figures for %q: leave the category out", b.ID, category)
		}
		return nil, fmt.Errorf("rule book %s has no figures for %q: it has them for %s", b.ID, category, strings.Join(known, ", "))
	}
	r := &Rules{ID: b.ID, Body: b.Body, Sport: b.Sport, Level: b.Level, Edition: b.Edition, Season: season, Category: category}
	for _, place := range places {
		if slices.ContainsFunc(b.Figures, func(f Figure) bool { return f.About == place }) {
			r.Positions = append(r.Positions, Position{Place: place})
		}
	}
	for _, own := range []bool{false, true} {
		for i := range b.Figures {
			if f := &b.Figures[i]; f.holds(at) && own == (len(f.For) > 0) && (!own || slices.Contains(f.For, category)) {
				r.set(f)
			}
		}
	}
	slices.SortFunc(r.Figures, func(x, y *Figure) int { return x.line - y.line })
	return r, nil
}

func (f *Figure) holds(at day) bool { return f.from <= at && at <= f.until }

// set puts the figure where it belongs; a category's own figure, which comes
// later, takes the place of the general one.
func (r *Rules) set(f *Figure) {
	if f.Name == "note" {
		r.Notes = append(r.Notes, f)
		r.Figures = append(r.Figures, f)
		return
	}
	if f.None() && (f.About == "numbers" || f.About == "contrast") {
		r.Figures = append(r.Figures, f) // to be listed; there is nothing to hold against it
		return
	}
	slot := r.slot(f)
	if old := *slot; old != nil {
		r.Figures = slices.DeleteFunc(r.Figures, func(x *Figure) bool { return x == old })
	}
	*slot = f
	r.Figures = append(r.Figures, f)
}

func (r *Rules) slot(f *Figure) **Figure {
	word, _ := lookup(f.About, f.Name) // Read has refused every other word
	switch {
	case word.numbers != nil:
		return word.numbers(&r.Numbers)
	case word.names != nil:
		return word.names(&r.Names)
	case word.contrast != nil:
		return word.contrast(&r.Contrast)
	}
	return word.place(r.Position(f.About))
}
