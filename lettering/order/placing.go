package order

import (
	"slices"
	"strconv"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
)

// SizedLength is a length for some sizes only.
type SizedLength struct {
	Group  garment.Group
	Letter string // of one size; empty for the whole group
	Length length.Length
}

// holds reports whether the length is for a size.
func (s SizedLength) holds(size garment.Size) bool {
	return s.Group == size.Group && (s.Letter == "" || s.Letter == size.Letter)
}

// lengthFor returns the length that is nearest to a size: that of the size
// itself, else that of its group, else nil.
func lengthFor(all []SizedLength, size garment.Size) *length.Length {
	var out *length.Length
	for i := range all {
		if s := &all[i]; s.holds(size) && (out == nil || s.Letter != "") {
			out = &s.Length
		}
	}
	return out
}

// HeightFor returns the height asked for on a size: its own, its group's, or
// that of all sizes.
func (p Piece) HeightFor(size garment.Size) Height {
	if l := lengthFor(p.Heights, size); l != nil {
		return Height{By: ByLength, Length: *l}
	}
	return p.Height
}

// BelowFor returns the distance from the collar that is asked for on a size: its
// own, its group's, or that of all sizes; nil leaves it to the placement table.
func (p Piece) BelowFor(size garment.Size) *length.Length {
	if l := lengthFor(p.Belows, size); l != nil {
		return l
	}
	return p.Below
}

// Where a piece stands sideways, by the job's words. The wearer's left is on
// the viewer's right of the front.
const (
	AtCentre = "centre"
	AtLeft   = "wearer's left"
	AtRight  = "wearer's right"
)

// sides returns the words for where a piece of a place may stand sideways; none
// where the trade has no choice.
func sides(place Place) []string {
	switch place {
	case garment.FrontName, garment.FrontNumber:
		return []string{AtCentre, AtLeft, AtRight}
	case garment.SleeveNumber, garment.ShortsNumber:
		return []string{AtLeft, AtRight}
	}
	return nil
}

// placing are the keys of where a piece stands.
func (d *draft) placing(p *piece) []field {
	table := []field{{key: "below", read: d.bySizes(func(v value) { set(&p.Below)(v.length(drops)) }, &p.Belows, drops)}}
	if words := sides(p.Place); words != nil {
		table = append(table, field{key: "at", read: word(&p.At, "side", words)})
	} else {
		table = append(table, field{key: "at", not: "its place has no choice of side"})
	}
	if p.Place == garment.FrontName {
		table = append(table, field{key: "split", read: func(v value) { p.readSplit(v) }})
	} else {
		table = append(table, field{key: "split", not: "only a front name is parted at a placket"})
	}
	return table
}

// defaultKey is the key of the value for every size that has none of its own.
const defaultKey = "default"

// bySizes reads a value for all sizes, or a mapping from sizes to lengths:
// {default: 3 1/2in, youth: 2 1/2in, youth XS: 2in}.
func (d *draft) bySizes(all func(value), sized *[]SizedLength, b bounds) func(value) {
	return func(v value) {
		if v.node.Kind != mapping {
			all(v)
			return
		}
		table := []field{{key: defaultKey, read: all}}
		for i := 0; i+1 < len(v.node.Content); i += 2 {
			key := v.node.Content[i].Value
			if to, ok := d.sizeKey(key); ok {
				table = append(table, field{key: key, read: func(x value) { d.sizedLength(x, to, sized, b) }})
			}
		}
		for _, g := range groups() { // so that the hint for a slip of the pen can name them
			if !slices.ContainsFunc(table, func(f field) bool { return f.key == g }) {
				table = append(table, field{key: g})
			}
		}
		v.fields("{default: 3 1/2in, youth: 2 1/2in, youth XS: 2in}", table)
	}
}

// sizeKey reads a group, or a size; one without a group is of the job's own.
func (d *draft) sizeKey(key string) (SizedLength, bool) {
	if slices.Contains(groups(), key) {
		return SizedLength{Group: garment.Group(key)}, true
	}
	size, err := garment.ParseSize(key, d.o.Garment.Group)
	return SizedLength{Group: size.Group, Letter: size.Letter}, err == nil && key != defaultKey
}

func (d *draft) sizedLength(v value, to SizedLength, sized *[]SizedLength, b bounds) {
	l, ok := v.length(b)
	if !ok {
		return
	}
	to.Length = *l
	for _, s := range *sized {
		if s.Group == to.Group && s.Letter == to.Letter {
			v.keyFault("keep one of them", "%s: %s is the same size as another key", v.name, v.key.Value)
			return
		}
	}
	*sized = append(*sized, to)
}

// splits checks that a piece that is to be parted has an opening and letters on
// both sides of it. A cut that was not understood is fault enough.
func (d *draft) splits(p *piece) {
	v := p.found["split"]
	letters := len([]rune(strings.Join(strings.Fields(p.Text), "")))
	switch cut := d.o.Garment.Cut; {
	case v.r == nil || cut == "":
	case cut != garment.FullButton:
		v.keyFault("delete it", "%s: a %s has no opening to part it at", p.Place, cut)
	case p.Text != "" && p.SplitAt >= letters:
		v.fault("leave a letter right of the opening", "%s: %s has only %d letters", v.name, p.Text, letters)
	}
}

// splitAt comes before the number of letters that stand left of the opening.
const splitAt = "at "

// readSplit reads where a name is parted at a placket: at 3, or no.
func (p *piece) readSplit(v value) {
	s, ok := v.scalar()
	if !ok {
		return
	}
	const hint = "write at 3 for three letters left of the opening, or no"
	switch n, err := strconv.Atoi(strings.TrimPrefix(s, splitAt)); {
	case s == "no" || s == "false":
		p.Unsplit = true
	case !strings.HasPrefix(s, splitAt) || err != nil:
		v.fault(hint, "%s: %q is no place to part a name at", v.name, s)
	case n < 1 || n >= nameLetters:
		v.fault(hint, "%s: %d letters cannot stand left of the opening", v.name, n)
	default:
		p.SplitAt = n
	}
}
