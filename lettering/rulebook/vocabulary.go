package rulebook

import "slices"

// kind says what a figure's value may be.
type kind uint8

const (
	asLength  kind = iota // 6in
	asLengths             // 20cm, 25cm
	asCount               // 2
	asRatio               // 6, 4.5
	asWord                // one of the words
	asNumbers             // 1 2 13
	asDigits              // 0-5
	asText                // anything
)

// word is one figure that a book may give: what it is called, what its value
// may be, and where it is kept. Exactly one of the four places is set.
type word struct {
	name     string
	kind     kind
	words    []string
	numbers  func(*Numbers) **Figure
	place    func(*Position) **Figure
	names    func(*Names) **Figure
	contrast func(*Contrast) **Figure
}

var (
	yesNo     = []string{"yes", "no"}
	legality  = []string{"legal", "illegal"}
	sameWords = []string{"as written", "by value"}
)

var numberWords = []word{
	{name: "at least", kind: asCount, numbers: func(n *Numbers) **Figure { return &n.Min }},
	{name: "at most", kind: asCount, numbers: func(n *Numbers) **Figure { return &n.Max }},
	{name: "digits allowed", kind: asDigits, numbers: func(n *Numbers) **Figure { return &n.Digits }},
	{name: "digits at most", kind: asCount, numbers: func(n *Numbers) **Figure { return &n.DigitsMax }},
	{name: "only", kind: asNumbers, numbers: func(n *Numbers) **Figure { return &n.Only }},
	{name: "not", kind: asNumbers, numbers: func(n *Numbers) **Figure { return &n.Not }},
	{name: "zero", kind: asWord, words: legality, numbers: func(n *Numbers) **Figure { return &n.Zero }},
	{name: "double zero", kind: asWord, words: legality, numbers: func(n *Numbers) **Figure { return &n.DoubleZero }},
	{name: "leading zero", kind: asWord, words: legality, numbers: func(n *Numbers) **Figure { return &n.LeadingZero }},
	{name: "zero and double zero", kind: asWord, words: legality, numbers: func(n *Numbers) **Figure { return &n.ZeroAndDouble }},
	{name: "same number", kind: asWord, words: sameWords, numbers: func(n *Numbers) **Figure { return &n.Same }},
	{
		name: "duplicates", kind: asWord, words: []string{"none", "two but not together", "not together"},
		numbers: func(n *Numbers) **Figure { return &n.Duplicates },
	},
	{name: "goalkeepers only", kind: asNumbers, numbers: func(n *Numbers) **Figure { return &n.GoalkeepersOnly }},
	{name: "numerals", kind: asWord, words: []string{"arabic"}, numbers: func(n *Numbers) **Figure { return &n.Numerals }},
	{name: "digit style", kind: asText, numbers: func(n *Numbers) **Figure { return &n.Style }},
	{name: "alike front and back", kind: asWord, words: yesNo, numbers: func(n *Numbers) **Figure { return &n.Alike }},
	{
		name: "alike in the team", kind: asWord, words: []string{"yes", "no", "not the libero"},
		numbers: func(n *Numbers) **Figure { return &n.Team },
	},
	{name: "goalkeeper needs none", kind: asWord, words: yesNo, numbers: func(n *Numbers) **Figure { return &n.GoalkeeperFree }},
}

var placeWords = []word{
	{
		name: "required", kind: asWord, words: []string{"yes", "no", "recommended", "forbidden", "unstated", "or shorts", "or front"},
		place: func(p *Position) **Figure { return &p.Required },
	},
	{name: "height at least", kind: asLength, place: func(p *Position) **Figure { return &p.HeightMin }},
	{name: "height at most", kind: asLength, place: func(p *Position) **Figure { return &p.HeightMax }},
	{name: "height exactly", kind: asLengths, place: func(p *Position) **Figure { return &p.HeightExact }},
	{name: "height about", kind: asLength, place: func(p *Position) **Figure { return &p.HeightAbout }},
	{name: "height advised at least", kind: asLength, place: func(p *Position) **Figure { return &p.HeightAdvised }},
	{name: "height includes border", kind: asWord, words: yesNo, place: func(p *Position) **Figure { return &p.HeightIncludesBorder }},
	{name: "stroke at least", kind: asLength, place: func(p *Position) **Figure { return &p.StrokeMin }},
	{name: "stroke at most", kind: asLength, place: func(p *Position) **Figure { return &p.StrokeMax }},
	{name: "stroke about", kind: asLength, place: func(p *Position) **Figure { return &p.StrokeAbout }},
	{name: "stroke includes border", kind: asWord, words: yesNo, place: func(p *Position) **Figure { return &p.StrokeIncludesBorder }},
	{name: "digit width at least", kind: asLength, place: func(p *Position) **Figure { return &p.WidthMin }},
	{name: "width of 1 digit at least", kind: asLength, place: func(p *Position) **Figure { return &p.BlockMin[1] }},
	{name: "width of 2 digits at least", kind: asLength, place: func(p *Position) **Figure { return &p.BlockMin[2] }},
	{name: "width of 3 digits at least", kind: asLength, place: func(p *Position) **Figure { return &p.BlockMin[3] }},
	{name: "gap between digits exactly", kind: asLengths, place: func(p *Position) **Figure { return &p.GapExact }},
	{name: "border at least", kind: asLength, place: func(p *Position) **Figure { return &p.BorderMin }},
	{name: "border at most", kind: asLength, place: func(p *Position) **Figure { return &p.BorderMax }},
	{name: "each border at most", kind: asLength, place: func(p *Position) **Figure { return &p.EachBorderMax }},
	{name: "borders at most", kind: asCount, place: func(p *Position) **Figure { return &p.BorderCountMax }},
	{name: "shadow at most", kind: asLength, place: func(p *Position) **Figure { return &p.ShadowMax }},
	{name: "colours at most", kind: asCount, place: func(p *Position) **Figure { return &p.ColoursMax }},
	{
		name: "centred", kind: asWord, words: []string{"across", "down", "both"},
		place: func(p *Position) **Figure { return &p.Centred },
	},
	{name: "below collar at most", kind: asLength, place: func(p *Position) **Figure { return &p.BelowCollarMax }},
	{
		name: "upper half", kind: asWord, words: []string{"yes", "no", "upper part"},
		place: func(p *Position) **Figure { return &p.UpperHalf },
	},
	{name: "same as shirt", kind: asWord, words: yesNo, place: func(p *Position) **Figure { return &p.MatchesShirt }},
}

var nameWords = []word{
	{name: "allowed", kind: asWord, words: yesNo, names: func(n *Names) **Figure { return &n.Allowed }},
	{name: "required", kind: asWord, words: []string{"yes", "no", "all or none"}, names: func(n *Names) **Figure { return &n.Required }},
	{name: "height at least", kind: asLength, names: func(n *Names) **Figure { return &n.HeightMin }},
	{name: "height at most", kind: asLength, names: func(n *Names) **Figure { return &n.HeightMax }},
	{name: "height exactly", kind: asLengths, names: func(n *Names) **Figure { return &n.HeightExact }},
	{name: "long from", kind: asCount, names: func(n *Names) **Figure { return &n.LongFrom }},
	{name: "height of long names exactly", kind: asLengths, names: func(n *Names) **Figure { return &n.LongHeight }},
	{name: "height of short names exactly", kind: asLengths, names: func(n *Names) **Figure { return &n.ShortHeight }},
	{name: "stroke of long names at least", kind: asLength, names: func(n *Names) **Figure { return &n.LongStroke }},
	{name: "stroke of short names at least", kind: asLength, names: func(n *Names) **Figure { return &n.ShortStroke }},
	{name: "width at least", kind: asLength, names: func(n *Names) **Figure { return &n.WidthMin }},
	{name: "width at most", kind: asLength, names: func(n *Names) **Figure { return &n.WidthMax }},
	{name: "gap to number at least", kind: asLength, names: func(n *Names) **Figure { return &n.GapMin }},
	{
		name: "side of number", kind: asWord, words: []string{"above", "below", "either"},
		names: func(n *Names) **Figure { return &n.Side },
	},
	{name: "ends level", kind: asWord, words: yesNo, names: func(n *Names) **Figure { return &n.EndsLevel }},
	{name: "ends clear of number", kind: asWord, words: yesNo, names: func(n *Names) **Figure { return &n.EndsClear }},
	{name: "one colour behind", kind: asWord, words: yesNo, names: func(n *Names) **Figure { return &n.Ground }},
	{name: "straight", kind: asWord, words: yesNo, names: func(n *Names) **Figure { return &n.Straight }},
	{name: "colours at most", kind: asCount, names: func(n *Names) **Figure { return &n.ColoursMax }},
}

var contrastWords = []word{
	{name: "body of number", kind: asWord, words: []string{"yes", "or border"}, contrast: func(c *Contrast) **Figure { return &c.Body }},
	{name: "border instead at least", kind: asLength, contrast: func(c *Contrast) **Figure { return &c.BorderMin }},
	{name: "one solid colour", kind: asWord, words: yesNo, contrast: func(c *Contrast) **Figure { return &c.Solid }},
	{name: "ratio at least", kind: asRatio, contrast: func(c *Contrast) **Figure { return &c.RatioMin }},
	{name: "border contrasts", kind: asWord, words: yesNo, contrast: func(c *Contrast) **Figure { return &c.Border }},
	{name: "one colour behind the number", kind: asWord, words: yesNo, contrast: func(c *Contrast) **Figure { return &c.Ground }},
	{name: "lightness difference behind the number at most", kind: asRatio, contrast: func(c *Contrast) **Figure { return &c.GroundDeltaLMax }},
	{name: "libero unlike the team", kind: asWord, words: yesNo, contrast: func(c *Contrast) **Figure { return &c.Libero }},
	{name: "lightness difference at least", kind: asRatio, contrast: func(c *Contrast) **Figure { return &c.DeltaLMin }},
}

// abouts are what a fact may be about, in the order messages list them.
func abouts() []string {
	return append([]string{"numbers", "names", "contrast", "book"}, places...)
}

// wordsAbout returns the figures that may be given about a subject; every
// subject may also have a note.
func wordsAbout(about string) []word {
	switch {
	case about == "numbers":
		return numberWords
	case about == "names":
		return nameWords
	case about == "contrast":
		return contrastWords
	case slices.Contains(places, about):
		return placeWords
	}
	return nil
}

func lookup(about, name string) (word, bool) {
	if name == "note" {
		return word{name: "note", kind: asText}, slices.Contains(abouts(), about)
	}
	for _, w := range wordsAbout(about) {
		if w.name == name {
			return w, true
		}
	}
	return word{}, false
}
