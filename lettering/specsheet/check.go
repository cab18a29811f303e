package specsheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
)

// Least distances, mm, between two measures: what the drawing of a garment needs
// and the generic table was made to. Common practice, no source.
const (
	leastShoulder = 40.0  // of shoulder beyond the neck, both sides together
	leastBelowArm = 100.0 // of side below the armhole
	same          = 1e-6  // two lengths that differ less are one
)

// rule is one that the measures of a garment obey. It holds for the cuts that
// have all of its measures.
type rule struct {
	measures []string
	ok       func(v []float64) bool
	says     string // what is wrong, with a %s for each measure in turn
}

func rules() []rule {
	under := func(least float64) func(v []float64) bool {
		return func(v []float64) bool { return v[0]+least < v[1] }
	}
	atMost := func(v []float64) bool { return v[0] <= v[1] }
	return []rule{
		{[]string{"neck width", "shoulder width"}, under(leastShoulder), "neck width %s leaves no shoulder within shoulder width %s"},
		{[]string{"shoulder width", "chest half"}, atMost, "shoulder width %s is over chest half %s"},
		{[]string{"armhole depth", "body length"}, under(leastBelowArm), "armhole depth %s leaves under 100 mm of side in body length %s"},
		{[]string{"neck drop front", "armhole depth"}, under(0), "neck drop front %s is not above armhole depth %s"},
		{[]string{"neck drop back", "neck drop front"}, atMost, "neck drop back %s is below neck drop front %s"},
		{[]string{"shoulder drop", "armhole depth"}, under(0), "shoulder drop %s is not above armhole depth %s"},
		{[]string{"shoulder width", "neck width", "strap width"}, func(v []float64) bool { return math.Abs(v[0]-v[1]-2*v[2]) <= same },
			"shoulder width %s is not neck width %s and twice strap width %s"},
		{[]string{"racer width", "shoulder width"}, under(0), "racer width %s is not under shoulder width %s"},
		{[]string{"neck drop front", "yoke depth"}, under(0), "neck drop front %s reaches below yoke depth %s: the yoke would fall into two pieces"},
		{[]string{"yoke depth", "armhole depth"}, under(0), "yoke depth %s is not above armhole depth %s"},
		{[]string{"placket length", "neck drop front", "body length"}, func(v []float64) bool { return v[0]+v[1] < v[2] },
			"placket length %s under neck drop front %s runs past body length %s"},
		{[]string{"waist half", "hip half"}, atMost, "waist half %s is over hip half %s"},
		{[]string{"front rise", "back rise"}, atMost, "front rise %s is over back rise %s"},
		{[]string{"band", "front rise"}, func(v []float64) bool { return v[0] < v[1]/2 }, "band %s takes half of front rise %s"},
	}
}

// settle holds the measures of every size that the sheet names against the rules,
// and notes what the generic table filled.
func (r *reader) settle() {
	s := r.sheet
	for _, cut := range s.cuts() {
		r.strangers(cut)
		var before []garment.Figure
		for i, size := range s.sizes[cut] {
			figures, err := s.Figures(cut, size)
			if err != nil {
				r.fault(s.first(cut, size), "", "%v", err)
				continue
			}
			found := len(r.faults)
			r.obey(cut, size, figures)
			if i > 0 && s.sizes[cut][i-1].Group == size.Group {
				r.grow(cut, s.sizes[cut][i-1], before, size, figures)
			}
			if before = figures; len(r.faults) > found {
				continue
			}
			if _, err := garment.FromFigures(cut, size, figures); err != nil {
				r.fault(s.first(cut, size), "look at the measures of this size", "%v", err)
			}
			r.doubt(cut, size, figures)
			s.fills(cut, size)
		}
	}
}

// strangers notes measures that the cut does not have.
func (r *reader) strangers(cut garment.Cut) {
	names, told := garment.MeasureNames(cut), map[string]bool{}
	for _, size := range r.sheet.sizes[cut] {
		for _, k := range r.sheet.keys(cut, size) {
			if slices.Contains(names, k.measure) {
				continue
			}
			if v := r.sheet.given[k]; !told[k.measure] {
				told[k.measure] = true
				r.sheet.notes = append(r.sheet.notes, Note{At: v.cell.at, Cut: cut,
					Message: fmt.Sprintf("%s is not used: a %s has no such measure", k.measure, cut), Remedy: knownMeasures(cut)})
			}
		}
	}
}

// keys returns what the sheet gives of a size, in file order.
func (s *Sheet) keys(cut garment.Cut, size garment.Size) []key {
	var out []key
	for k := range s.given {
		if k.cut == cut && k.size == size {
			out = append(out, k)
		}
	}
	slices.SortFunc(out, func(a, b key) int {
		if c := s.given[a].cell.at.Compare(s.given[b].cell.at); c != 0 {
			return c
		}
		return strings.Compare(a.measure, b.measure)
	})
	return out
}

// first returns the first cell of a size.
func (s *Sheet) first(cut garment.Cut, size garment.Size) cell {
	return s.given[s.keys(cut, size)[0]].cell
}

// obey faults every rule that a size breaks.
func (r *reader) obey(cut garment.Cut, size garment.Size, figures []garment.Figure) {
	for _, rule := range rules() {
		v := make([]float64, len(rule.measures))
		has := true
		for i, name := range rule.measures {
			k := slices.IndexFunc(figures, func(f garment.Figure) bool { return f.Measure == name })
			if has = has && k >= 0; has {
				v[i] = figures[k].MM
			}
		}
		if !has || rule.ok(v) {
			continue
		}
		var words []any
		var blamed *cell
		var lacking []string
		for i, name := range rule.measures {
			given, ok := r.sheet.given[key{cut, size, name}]
			if words = append(words, r.sheet.say(cut, size, name, v[i])); !ok {
				lacking = append(lacking, name)
			} else if blamed == nil {
				blamed = &given.cell
			}
		}
		at, hint := r.sheet.first(cut, size), "look at both figures and their units"
		if blamed != nil {
			at = *blamed
		}
		if len(lacking) > 0 {
			hint = "give " + strings.Join(lacking, " and ") + " of " + size.String() + " too, or look at this figure and its unit"
		}
		r.fault(at, hint, "%s %s: "+rule.says, append([]any{cut, size}, words...)...)
	}
}

// say prints a measure as it was given, or as the generic table has it.
func (s *Sheet) say(cut garment.Cut, size garment.Size, name string, mm float64) string {
	if v, ok := s.given[key{cut, size, name}]; ok {
		return v.as
	}
	figure := fmt.Sprintf("%g mm", math.Round(mm*10)/10)
	if v := s.given[s.anyKey(cut, size)]; v.unit == length.Inch {
		figure = length.Plain(mm, length.Inch, length.Nearest)
	}
	if s.worked(cut, size) == name {
		return figure + " (worked out)"
	}
	return figure + " (generic)"
}

// worked names the measure of a size that was worked out from others, if any.
func (s *Sheet) worked(cut garment.Cut, size garment.Size) string {
	_, generic, err := garment.Standard(cut, size)
	if err != nil {
		return ""
	}
	return s.straps(cut, size, generic).Measure
}

func (s *Sheet) anyKey(cut garment.Cut, size garment.Size) key {
	if keys := s.keys(cut, size); len(keys) > 0 {
		return keys[0]
	}
	return key{}
}

// grow faults measures that fall from one size of a group to the next.
func (r *reader) grow(cut garment.Cut, small garment.Size, before []garment.Figure, size garment.Size, now []garment.Figure) {
	for i := range before {
		name := before[i].Measure
		if i >= len(now) || now[i].MM >= before[i].MM-same {
			continue
		}
		at, here := r.sheet.given[key{cut, size, name}]
		from, there := r.sheet.given[key{cut, small, name}]
		hint := "look at both figures and their units"
		switch {
		case !here && !there:
			at = value{cell: r.sheet.first(cut, size)}
		case !here:
			at, hint = from, "give "+name+" of "+size.String()+" too, or look at this figure and its unit"
		case !there:
			hint = "give " + name + " of " + small.String() + " too, or look at this figure and its unit"
		}
		r.fault(at.cell, hint, "%s: %s falls from %s in %s to %s in %s", cut, name,
			r.sheet.say(cut, small, name, before[i].MM), small, r.sheet.say(cut, size, name, now[i].MM), size)
	}
}
