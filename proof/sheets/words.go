package sheets

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
)

// length prints a length in the job's unit, to the nearest step.
func (d *document) length(mm float64) string { return d.rounded(mm, length.Nearest) }

// rounded prints a length in the job's unit, rounded the given way.
func (d *document) rounded(mm float64, r length.Rounding) string {
	return length.Page(mm, d.order.Units, r)
}

// sentenceCase raises the first letter.
func sentenceCase(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

// sport names the sport of the order, empty for one without a name.
func (d *document) sport() string {
	if d.order.Sport == "other" {
		return ""
	}
	return sentenceCase(d.order.Sport)
}

// noun is what the wearer calls the garment: shirt, jersey, shorts.
func (d *document) noun() string {
	if info, ok := d.order.Garment.Cut.Info(); ok {
		return info.Noun
	}
	return "garment"
}

// garmentWords names the garment of the order: women’s V-neck shirt. No group
// is said when the players' differ.
func (d *document) garmentWords() string {
	title := string(d.order.Garment.Cut)
	if info, ok := d.order.Garment.Cut.Info(); ok {
		title, _, _ = strings.Cut(info.Title, ",")
		if last := title[strings.LastIndex(title, " ")+1:]; last != "tee" && last != "tank" && last != info.Noun {
			title += " " + info.Noun
		}
	}
	if g, ok := d.group(); ok {
		title = strings.TrimSpace(groupWords(g) + " " + title)
	}
	return title
}

// group returns the one group that every known size is of; ok is false when
// they differ.
func (d *document) group() (g garment.Group, ok bool) {
	g = d.order.Garment.Group
	first := true
	for _, p := range d.in.Sized.Players {
		switch {
		case !p.SizeKnown:
		case first:
			g, first = p.Size.Group, false
		case p.Size.Group != g:
			return "", false
		}
	}
	return g, true
}

// groupWords is how a group is said before a garment or a size; adult goes
// without saying.
func groupWords(g garment.Group) string {
	switch g {
	case garment.Women:
		return "women’s"
	case garment.Youth:
		return "youth"
	}
	return ""
}

// sizeLabel is how a size is written in captions and tables: the letter alone
// when all players' sizes are of one group, with the group's letter when not.
func (d *document) sizeLabel(s garment.Size) string {
	if _, one := d.group(); one {
		return s.Letter
	}
	return s.Label()
}

// sizeWords is how a size is said in a sentence: women’s M, youth L, 2XL; with
// sizes of other groups about, adult is said too.
func (d *document) sizeWords(s garment.Size) string {
	words := groupWords(s.Group)
	if _, one := d.group(); !one && words == "" {
		words = string(s.Group)
	}
	return strings.TrimSpace(words + " " + s.Letter)
}

// sizeCount is a size with the number of players who wear it.
type sizeCount struct {
	size    garment.Size
	players int
}

// sizeCounts returns the sizes of the roster from small to large.
func (d *document) sizeCounts() []sizeCount {
	var out []sizeCount
	for _, p := range d.in.Sized.Players {
		if p.Garment == nil {
			continue
		}
		i := slices.IndexFunc(out, func(c sizeCount) bool { return c.size == p.Size })
		if i < 0 {
			i, out = len(out), append(out, sizeCount{size: p.Size})
		}
		out[i].players++
	}
	slices.SortFunc(out, func(a, b sizeCount) int { return a.size.Compare(b.size) })
	return out
}
