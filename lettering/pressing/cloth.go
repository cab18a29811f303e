package pressing

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Cloth is what a garment is made of.
type Cloth struct {
	Parts []Part
	// Dyed is set for polyester that is dyed or sublimated in a colour: its dye
	// moves with heat. Undyed and pale cloth is not.
	Dyed bool
}

// Part is one fibre of a blend.
type Part struct {
	Fibre   string
	Percent float64
}

// ErrUnknownFibre is returned for cloth whose fibre is not said or not known: no
// temperature is safe for it.
var ErrUnknownFibre = errors.New("the fibre is not known")

// fibreWords are the words that labels use, by fibre.
var fibreWords = [...]struct {
	fibre string
	words []string
}{
	{"cotton", []string{"cotton"}},
	{"polyester", []string{"polyester", "poly", "pes"}},
	{"nylon", []string{"nylon", "polyamide"}},
	{"spandex", []string{"spandex", "elastane", "elasthane"}},
	{"acrylic", []string{"acrylic"}},
	{"modacrylic", []string{"modacrylic"}},
	{"polypropylene", []string{"polypropylene", "olefin"}},
	{"acetate", []string{"acetate"}},
	{"wool", []string{"wool"}},
}

// Fibres lists the fibres that are known.
func Fibres() []string {
	var out []string
	for _, f := range fibreWords {
		out = append(out, f.fibre)
	}
	return out
}

var (
	percents = regexp.MustCompile(`(\d+(?:\.\d+)?)\s*%`)
	ratio    = regexp.MustCompile(`(\d+)\s*/\s*(\d+)`)
	letters  = regexp.MustCompile(`\p{L}+`)
)

// Words that say nothing of what a fibre stands.
var passedOver = []string{"and", "dyed", "sublimated", "undyed", "pale", "white", "mesh", "knit", "jersey", "recycled", "moisture", "wicking", "blend", "with", "of", "combed", "ring", "spun"}

// ParseCloth reads what a label or a job says of the fibre: polyester, 50/50
// cotton/polyester, 92 % polyester 8 % spandex, sublimated polyester. A blend
// without figures counts each part as half. Dyed is what the words say; the
// caller adds what the garment's colour says. The error wraps ErrUnknownFibre and
// names the word.
func ParseCloth(text string) (Cloth, error) {
	lower := strings.ToLower(text)
	var c Cloth
	for _, word := range letters.FindAllString(lower, -1) {
		if slices.Contains(passedOver, word) {
			continue
		}
		fibre, ok := fibreOf(word)
		if !ok {
			return c, fmt.Errorf("%w: %q is no fibre that this program knows; ask the maker, or read the sewn-in label", ErrUnknownFibre, word)
		}
		c.Parts = append(c.Parts, Part{Fibre: fibre})
	}
	if len(c.Parts) == 0 {
		return c, fmt.Errorf("%w: write fibre: in the job, from the sewn-in label", ErrUnknownFibre)
	}
	said := strings.Fields(strings.NewReplacer(",", " ", "/", " ").Replace(lower))
	c.Dyed = slices.Contains(said, "dyed") || slices.Contains(said, "sublimated")
	return c, c.share(lower)
}

func fibreOf(word string) (string, bool) {
	for _, f := range fibreWords {
		if slices.Contains(f.words, word) {
			return f.fibre, true
		}
	}
	return "", false
}

// share gives the parts their percentages.
func (c *Cloth) share(text string) error {
	var figures []float64
	for _, m := range percents.FindAllStringSubmatch(text, -1) {
		v, _ := strconv.ParseFloat(m[1], 64)
		figures = append(figures, v)
	}
	if m := ratio.FindStringSubmatch(text); m != nil && len(figures) == 0 {
		for _, t := range m[1:] {
			v, _ := strconv.ParseFloat(t, 64)
			figures = append(figures, v)
		}
	}
	sum := 0.0
	for _, v := range figures {
		sum += v
	}
	switch {
	case len(figures) == 0:
		for i := range c.Parts {
			c.Parts[i].Percent = max(mostly, 100/float64(len(c.Parts)))
		}
		return nil
	case len(figures) != len(c.Parts) || sum < 99 || sum > 101:
		return fmt.Errorf("fibre %q: the shares do not add up to 100 for its %d fibres", text, len(c.Parts))
	}
	for i := range c.Parts {
		c.Parts[i].Percent = figures[i]
	}
	return nil
}

// Share returns the percentage of a fibre.
func (c Cloth) Share(fibre string) float64 {
	sum := 0.0
	for _, p := range c.Parts {
		if p.Fibre == fibre {
			sum += p.Percent
		}
	}
	return sum
}

// String returns the cloth in words.
func (c Cloth) String() string {
	var out []string
	for _, p := range c.Parts {
		word := p.Fibre
		if p.Fibre == "polyester" && c.Dyed {
			word = "dyed polyester"
		}
		out = append(out, word)
	}
	return strings.Join(out, " and ")
}

// CeilingOf returns the heat that cloth stands: the lowest of its fibres'. A
// blocker lifts it only where the other fibres stand more too, and the shortest
// time of any fibre counts.
func (s *Shop) CeilingOf(c Cloth) (Ceiling, error) {
	var low Ceiling
	var all []Ceiling
	for _, p := range c.Parts {
		i := slices.IndexFunc(s.Ceilings, func(k Ceiling) bool {
			return k.Fibre == p.Fibre && (k.State == "" || (k.State == "dyed") == c.Dyed)
		})
		if i < 0 {
			return low, fmt.Errorf("%w: %s", ErrUnknownFibre, p.Fibre)
		}
		k := s.Ceilings[i]
		all = append(all, k)
		if low.Fibre == "" || k.Warn < low.Warn || k.Warn == low.Warn && k.Stop < low.Stop {
			low = k
		}
	}
	if low.Fibre == "" {
		return low, ErrUnknownFibre
	}
	for _, k := range all {
		low.BlockerLifts = low.BlockerLifts && (k.BlockerLifts || k.Warn >= low.Stop)
		low.Stop = min(low.Stop, k.Stop)
		if k.WarnS > 0 && (low.WarnS == 0 || k.WarnS < low.WarnS) {
			low.WarnS = k.WarnS
		}
	}
	return low, nil
}
