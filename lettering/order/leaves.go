package order

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"time"

	"golang.org/x/text/language"

	"yokeline/lettering/length"
)

// bounds of a length, in millimetres, and the words for them.
type bounds struct {
	least, most float64
	words       string
}

// What a length may sensibly be: figures outside are slips of the pen.
var (
	heights  = bounds{2, 1000, "between 2 mm and 1 m"}
	widths   = bounds{0.1, 50, "between 0.1 mm and 50 mm"}
	limits   = bounds{10, 3000, "between 10 mm and 3 m"}
	rises    = bounds{0.1, 1000, "between 0.1 mm and 1 m"}
	radii    = bounds{10, 100_000, "between 10 mm and 100 m"}
	openings = bounds{0, 300, "at most 300 mm"}
	drops    = bounds{0, 1000, "at most 1 m"}
)

// length returns a length within its bounds.
func (v value) length(b bounds) (*length.Length, bool) {
	s, ok := v.scalar()
	if !ok {
		return nil, false
	}
	l, err := length.Parse(s)
	if err != nil {
		v.fault("", "%s: %v", v.name, err)
		return nil, false
	}
	if mm := l.MM(); mm < b.least || mm > b.most {
		v.fault("write a length "+b.words, "%s: %v is out of reach", v.name, l)
		return nil, false
	}
	return &l, true
}

// decimal reads a plain decimal figure; no exponents, no infinities.
func decimal(s string) (float64, bool) {
	s = strings.Replace(strings.TrimSpace(s), "\u2212", "-", 1)
	if s == "" || len(s) > 12 || strings.Trim(s, "+-.0123456789") != "" {
		return 0, false
	}
	f, err := strconv.ParseFloat(s, 64)
	return f, err == nil && !math.IsInf(f, 0)
}

// percent returns a percentage as a fraction: -4% is -0.04.
func (v value) percent(least, most float64, hint string) (float64, bool) {
	s, ok := v.scalar()
	if !ok {
		return 0, false
	}
	figure, has := strings.CutSuffix(strings.TrimSpace(s), "%")
	p, ok := decimal(figure)
	switch {
	case !ok:
		v.fault(hint, "%s: %q is not a percentage", v.name, s)
	case !has:
		v.fault(hint, "%s: %s has no percent sign", v.name, s)
	case p < least || p > most:
		v.fault(hint, "%s: %s is out of reach: between %g%% and %g%%", v.name, s, least, most)
	default:
		return p / 100, true
	}
	return 0, false
}

// axis returns the value of a variable face's axis.
func (v value) axis() (*float64, bool) {
	s, ok := v.scalar()
	if !ok {
		return nil, false
	}
	f, ok := decimal(s)
	if !ok || f <= 0 || f > 1000 {
		v.fault("write a figure such as 75; the faces command lists each face's range", "%s: %q is not an axis value", v.name, s)
		return nil, false
	}
	return &f, true
}

// date returns a day as it was written, 2027-03-14.
func (v value) date() (string, bool) {
	s, ok := v.scalar()
	if !ok {
		return "", false
	}
	const form = "write year-month-day, such as 2027-03-14"
	if len(s) != len(time.DateOnly) || strings.Trim(s, "-0123456789") != "" {
		v.fault(form, "%s: %q is not a date", v.name, s)
		return "", false
	}
	if _, err := time.Parse(time.DateOnly, s); err != nil {
		v.fault(form, "%s: there is no day %s", v.name, s)
		return "", false
	}
	return s, true
}

// season returns a year, two years that follow each other, or a day, in the
// forms that rule books are looked up by: 2027, 2026-27, 2027-03-14.
func (v value) season() (string, bool) {
	s, ok := v.scalar()
	if !ok {
		return "", false
	}
	if _, err := time.Parse(time.DateOnly, s); err == nil {
		return s, true
	}
	first, second, two := strings.Cut(strings.Replace(s, "/", "-", 1), "-")
	year, err := strconv.Atoi(first)
	sound := err == nil && len(first) == 4 && year >= 1900 && year < 2200
	if next := fmt.Sprintf("%04d", max(year, 0)+1); two {
		sound = sound && (second == next || second == next[2:])
		first += "-" + next[2:]
	}
	if !sound {
		v.fault("write 2027, 2026-27 or a day such as 2027-03-14", "%s: %q is not a season", v.name, s)
		return "", false
	}
	return first, true
}

// lang returns a language tag.
func (v value) lang() (string, bool) {
	s, ok := v.scalar()
	if !ok {
		return "", false
	}
	if _, err := language.Parse(s); err != nil {
		v.fault("write a BCP 47 tag such as tr or pl", "%s: %q is not a language tag", v.name, s)
		return "", false
	}
	return s, true
}

var hexColour = regexp.MustCompile(`^#([0-9a-f]{3}|[0-9a-f]{6})$`)

// hex returns #rrggbb for #rgb or #rrggbb in any case.
func hex(s string) (string, bool) {
	s = strings.ToLower(s)
	if !hexColour.MatchString(s) {
		return "", false
	}
	if len(s) == 4 {
		s = "#" + strings.Repeat(s[1:2], 2) + strings.Repeat(s[2:3], 2) + strings.Repeat(s[3:4], 2)
	}
	return s, true
}

// colour returns a colour by a name of the job or by its hex figure.
func (v value) colour(known []Colour) (Colour, bool) {
	s, ok := v.scalar()
	if !ok {
		return Colour{}, false
	}
	for _, c := range known {
		if c.Name == s {
			return c, true
		}
	}
	if h, ok := hex(s); ok {
		return Colour{Hex: h}, true
	}
	if strings.HasPrefix(s, "#") {
		v.fault("write #rgb or #rrggbb with digits and a to f, such as \"#14284b\"", "%s: %q is not a colour", v.name, s)
		return Colour{}, false
	}
	var words []string
	for _, c := range known {
		words = append(words, c.Name)
	}
	hint := "name it under colours: with its #rrggbb"
	if k := near(s, words); k != "" {
		hint = didYouMean(k)
	}
	v.fault(hint, "%s: no colour is called %q", v.name, s)
	return Colour{}, false
}

// colours returns the job's own list, in file order.
func (v value) colours() []Colour {
	var out []Colour
	var table []field
	if v.node == nil || v.empty() {
		return nil
	}
	for i := 0; i+1 < len(v.node.Content) && v.node.Kind == mapping; i += 2 {
		table = append(table, field{key: v.node.Content[i].Value, read: func(x value) {
			if c, ok := x.ownColour(); ok {
				out = append(out, c)
			}
		}})
	}
	v.fields(`{navy: "#14284b"}`, table)
	return out
}

func (v value) ownColour() (Colour, bool) {
	s, ok := v.scalar()
	if !ok {
		return Colour{}, false
	}
	h, ok := hex(s)
	if !ok {
		hint := "write #rgb or #rrggbb in quotes, such as \"#14284b\""
		if with, ok := hex("#" + s); ok {
			hint = "write it with its sign, in quotes: \"" + with + "\""
		}
		v.fault(hint, "%s: %q is not a colour", v.name, s)
		h = plainWhite.Hex // the name is known all the same: pieces may use it
	}
	name := v.key.Value
	if strings.TrimSpace(name) != name || name == "" || len([]rune(name)) > nameLetters || strings.HasPrefix(name, "#") {
		v.keyFault("use a word such as navy", "%q is not a name for a colour", name)
		return Colour{}, false
	}
	return Colour{Name: name, Hex: h}, true
}
