package rulebook

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v4"

	"yokeline/lettering/length"
)

// mostFigures bounds the work on a hostile file: the longest of ours has 30.
const mostFigures = 1000

func (r *reader) figures(f fields, b *Book) {
	n := f.values["figures"]
	if n == nil || n.Kind != yaml.SequenceNode || len(n.Content) == 0 {
		r.fault(orRoot(n, f), "write at least one: - {about: back number, figure: height at least, is: 6in, ...}", "the rule book has no figures")
		return
	}
	if len(n.Content) > mostFigures {
		r.fault(n.Content[mostFigures], "", "the rule book has more than %d figures", mostFigures)
		return
	}
	for _, item := range n.Content {
		before := len(r.faults)
		figure := r.figure(item, b)
		if len(r.faults) == before {
			b.Figures = append(b.Figures, figure)
			r.nodes = append(r.nodes, item)
		}
	}
}

func (r *reader) figure(n *yaml.Node, b *Book) Figure {
	f := r.fields(n, "a figure", figureKeys)
	if n.Kind != yaml.MappingNode {
		return Figure{}
	}
	about := r.text(f, "about", "a figure", true)
	if about != "" && !slices.Contains(abouts(), about) {
		r.fault(f.values["about"], suggest(about, abouts()), "a figure cannot be about %q", about)
		return Figure{}
	}
	name := r.text(f, "figure", "a figure", true)
	word, known := lookup(about, name)
	if !known && about != "" && name != "" {
		r.fault(f.values["figure"], suggest(name, names(about)), "there is no figure %q about %s", name, about)
		return Figure{}
	}
	what := strings.TrimSpace(about + " " + name)
	out := Figure{
		About: about, Name: name, Is: r.text(f, "is", what, true),
		Rule: r.text(f, "rule", what, false), How: How(r.oneOf(f, "how", what, []string{string(HowRead), string(HowMemory)})),
		For: list(r.text(f, "for", what, false)), Note: r.text(f, "note", what, false), line: n.Line,
	}
	if f.values["advice"] != nil {
		out.Advice = r.oneOf(f, "advice", what, yesNo) == "yes"
	}
	if known && out.Is != "" {
		r.value(f.values["is"], word, &out)
	}
	r.cited(f, what, b, &out)
	r.seasons(f, what, &out)
	return out
}

// cited looks the source up. A figure that was read names a source that
// somebody has opened.
func (r *reader) cited(f fields, what string, b *Book, out *Figure) {
	key := r.text(f, "source", what, true)
	i := slices.IndexFunc(b.Sources, func(s Source) bool { return s.Key == key })
	switch {
	case key == "":
	case i < 0:
		keys := make([]string, len(b.Sources))
		for j, s := range b.Sources {
			keys[j] = s.Key
		}
		r.fault(f.values["source"], suggest(key, keys), "%s names the source %q, which is not among the sources", what, key)
	case b.Sources[i].Kind == "unseen" && out.How == HowRead:
		r.fault(f.values["how"], "write how: memory", "%s cannot have been read in a source that is unseen", what)
	default:
		out.Source = b.Sources[i]
	}
}

func (r *reader) seasons(f fields, what string, out *Figure) {
	out.from, out.until = firstDay, lastDay
	out.From, out.Until = r.text(f, "from", what, false), r.text(f, "until", what, false)
	if out.From != "" {
		s, err := parseSeason(out.From)
		if err != nil {
			r.fault(f.values["from"], "", "%s: %v", what, err)
		}
		out.from = s.first
	}
	if out.Until != "" {
		s, err := parseSeason(out.Until)
		if err != nil {
			r.fault(f.values["until"], "", "%s: %v", what, err)
			return
		}
		out.until = s.last
	}
	if out.from > out.until {
		r.fault(f.values["until"], "", "%s ends before it begins", what)
	}
}

// value reads what a figure is. A book that was read and prints no figure says
// none printed, which any figure may be.
func (r *reader) value(n *yaml.Node, w word, out *Figure) {
	if out.None() {
		return
	}
	var err error
	switch w.kind {
	case asLength, asLengths:
		out.Lengths, err = lengths(out.Is, w.kind == asLengths)
		if err == nil {
			out.Length = out.Lengths[0]
		}
	case asCount:
		out.Count, err = strconv.Atoi(out.Is)
		if err != nil || out.Count < 0 || out.Count > 9999 {
			err = fmt.Errorf("%q is not a whole number from 0 to 9999", out.Is)
		}
	case asRatio:
		out.Ratio, err = strconv.ParseFloat(out.Is, 64)
		if err != nil || math.IsNaN(out.Ratio) || out.Ratio <= 0 || out.Ratio > 100 {
			err = fmt.Errorf("%q is not a figure over 0 and up to 100", out.Is)
		}
	case asWord:
		if !slices.Contains(w.words, out.Is) {
			err = fmt.Errorf("%q is none of: %s", out.Is, strings.Join(w.words, ", "))
		}
	case asDigits:
		if len(out.Is) != 3 || out.Is[1] != '-' || out.Is[0] < '0' || out.Is[2] > '9' || out.Is[0] > out.Is[2] {
			err = fmt.Errorf("%q is not a range of digits such as 0-5", out.Is)
		}
	case asNumbers:
		if slices.ContainsFunc(strings.Fields(out.Is), func(s string) bool { return len(s) > 4 }) {
			err = fmt.Errorf("%q is not a list of numbers parted by spaces", out.Is)
		}
	}
	if err != nil {
		r.fault(n, "", "%s %s: %v", out.About, w.name, err)
	}
}

func lengths(text string, several bool) ([]length.Length, error) {
	parts := []string{text}
	if several {
		parts = strings.Split(text, ",")
	}
	var out []length.Length
	for _, p := range parts {
		l, err := length.Parse(p)
		if err != nil {
			return nil, err
		}
		if l.IsZero() {
			return nil, fmt.Errorf("a figure of nothing limits nothing")
		}
		out = append(out, l)
	}
	return out, nil
}

// contradictions reports figures that cannot hold at the same time.
func (r *reader) contradictions(b *Book) {
	for i := range b.Figures {
		for j := range i {
			r.pair(&b.Figures[j], &b.Figures[i], r.nodes[i])
		}
	}
}

func (r *reader) pair(a, b *Figure, at *yaml.Node) {
	together := a.from <= b.until && b.from <= a.until && slices.Equal(a.For, b.For) && a.About == b.About
	if !together || a.Name == "note" || b.Name == "note" {
		return
	}
	if a.Name == b.Name {
		r.fault(at, "give the two different seasons with from and until", "%s %s has two figures for the same seasons, the other on line %d", b.About, b.Name, a.line)
		return
	}
	low, high := a, b
	if strings.HasSuffix(b.Name, "at least") {
		low, high = b, a
	}
	stem, isLow := strings.CutSuffix(low.Name, "at least")
	other, isHigh := strings.CutSuffix(high.Name, "at most")
	if isLow && isHigh && stem == other && !low.None() && !high.None() &&
		(low.Length.Compare(high.Length) > 0 || low.Count > high.Count) {
		r.fault(at, "", "%s %s %s and %s %s cannot both hold", b.About, low.Name, low.Is, high.Name, high.Is)
	}
}
