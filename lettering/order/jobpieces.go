package order

import (
	"fmt"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/outline"
	"yokeline/lettering/spelling"
)

// piece is a piece while it is read, with where its values stand.
type piece struct {
	Piece
	at       value            // the whole of it
	found    map[string]value // its keys
	coloured bool
	shaped   bool // the shape given was understood
}

func (d *draft) garment(v value) {
	g := &d.o.Garment
	colour := func(to *Colour) func(value) {
		return func(v value) { set(to)(v.colour(d.o.Colours)) }
	}
	cut, group := "", ""
	const example = "{cut: crew-tee, colour: navy}"
	found, ok := v.fields(example, []field{
		{key: "cut", read: word(&cut, "cut", cuts())},
		{key: "group", read: word(&group, "group of sizes", groups())},
		{key: "colour", also: "color", read: colour(&g.Colour)},
		{key: "trim", read: colour(&g.Trim)},
		{key: "fibre", also: "fiber", read: line(&g.Fibre)},
		{key: "spec", read: d.spec},
		{key: "letters", read: d.letters},
		{key: "clear", read: d.clear},
	})
	if !ok {
		return
	}
	g.Cut = garment.Cut(cut)
	if group != "" {
		g.Group = garment.Group(group)
	}
	d.lettersKnown(v)
	if _, given := found["cut"]; !given {
		v.keyFault("such as garment: "+example, "garment: cut is missing")
	}
	if _, given := found["colour"]; !given {
		g.Colour = plainWhite
		v.note(Advice, "garment", "the garment's colour is not given: it is drawn white", "write its colour under garment:")
	}
}

func (d *draft) readPieces(v value) {
	d.pieces = map[Place]*piece{}
	var table []field
	for _, p := range Places() {
		table = append(table, field{key: string(p), read: func(x value) { d.readPiece(p, x) }})
	}
	found, ok := v.fields("back name: {height: 2in}", table)
	if ok && len(found) == 0 {
		v.keyFault("write what goes on the garment, such as back name: {height: 2in}", "pieces: there are none")
	}
}

func (d *draft) readPiece(place Place, v value) {
	p := &piece{Piece: newPiece(place), at: v}
	v.name = string(place)
	table := append(d.common(p), d.placing(p)...)
	if IsNumber(place) {
		table = append(table, field{key: "gap", read: length1(&p.Gap, openings)}, field{key: "ones", read: ones(&p.FullOnes)})
		for _, f := range d.lettering(p) {
			table = append(table, field{key: f.key, not: "a number is set straight and in digits"})
		}
	} else {
		table = append(table, d.lettering(p)...)
		table = append(table, field{key: "gap", not: "it is the gap between digits"}, field{key: "ones", not: "it is the room of the digit 1"})
	}
	if takesText(place) {
		table = append(table, field{key: "text", read: func(v value) { set(&p.Text)(v.twoLines(nameLetters)) }})
	} else {
		table = append(table, field{key: "text", not: "the roster gives it"})
	}
	found, ok := v.fields("{height: 2in, colour: white}", table)
	if !ok {
		return
	}
	p.found = found
	_, p.coloured = found["colour"]
	d.pieces[place] = p
	d.arch(p)
	if tail := found["tail"]; tail.r != nil && p.Tail != nil && p.Shape != "straight" {
		tail.keyFault("write shape: straight, or leave the tail out", "%s: a tail goes under a straight name", p.Place)
	}
	d.offered(p)
	d.splits(p)
	if takesText(place) && found["text"].r == nil {
		v.keyFault("write text: and what it says", "%s: text is missing", place)
	}
	d.heightKnown(p)
}

// common are the keys of every piece.
func (d *draft) common(p *piece) []field {
	return []field{
		{key: "face", read: d.face(&p.Face)},
		{key: "height", read: d.bySizes(d.height(p), &p.Heights, heights)},
		{key: "run", read: word(&p.Run, "way to step sizes", runWords())},
		{key: "limit", read: length1(&p.Limit, limits)},
		{key: "colour", also: "color", read: func(v value) { set(&p.Colour)(v.colour(d.o.Colours)) }},
		{key: "outlines", read: d.outlines(p)},
		{key: "wdth", read: func(v value) { set(&p.Wdth)(v.axis()) }},
		{key: "wght", read: func(v value) { set(&p.Wght)(v.axis()) }},
		{key: "embolden", read: length1(&p.Embolden, widths)},
		{key: "stroke", read: length1(&p.Stroke, widths)},
	}
}

// lettering are the keys of pieces made of letters.
func (d *draft) lettering(p *piece) []field {
	return []field{
		{key: "case", read: cased(&p.Case)},
		{key: "shape", read: func(v value) {
			s, ok := v.word("shape", Shapes())
			set(&p.Shape)(s, ok)
			p.shaped = ok
		}},
		{key: "radius", read: length1(&p.Radius, radii)},
		{key: "rise", read: length1(&p.Rise, rises)},
		{key: "spacing", read: word(&p.Spacing, "way to space an arch", []string{"baseline", "middle"})},
		{key: "squash", read: func(v value) { set(&p.Squash)(v.flag()) }},
		{key: "lang", read: func(v value) { set(&p.Lang)(v.lang()) }},
		{key: "prefix", read: func(v value) {
			s, _ := v.word("way to set a prefix", prefixes())
			p.RaisePrefix = s == raisedPrefix
		}},
		{key: "lean", read: func(v value) { set(&p.Lean)(v.degrees(60)) }},
		{key: "keep gap", read: func(v value) { set(&p.KeepGap)(v.flag()) }},
		{key: "optical", read: func(v value) { set(&p.Optical)(v.flag()) }},
		{key: "tail", read: d.tail(p)},
	}
}

const listFaces = "the faces command lists the faces that come with the program"

func (d *draft) face(to *string) func(value) {
	return func(v value) {
		s, ok := v.scalar()
		ext := strings.ToLower(s)
		switch {
		case !ok:
		case strings.HasSuffix(ext, ".ttf"), strings.HasSuffix(ext, ".otf"):
			*to = s
		case strings.ContainsAny(s, "./\\"):
			v.fault("use a .ttf or .otf file, or the id of a face that comes with the program", "%s: %q is not a font file that can be read", v.name, s)
		case len(d.known.faces) > 0:
			set(to)(v.wordElse("face", d.known.faces, listFaces))
		case s == "" || strings.Trim(s, "abcdefghijklmnopqrstuvwxyz0123456789-") != "":
			v.fault(listFaces, "%s: %q is not a face", v.name, s)
		default:
			*to = s
		}
	}
}

// The words for heights that are not written out.
const bySize, byRule, largest = "by size", "by rule", "largest"

func (d *draft) height(p *piece) func(value) {
	return func(v value) {
		s, ok := v.scalar()
		switch {
		case !ok:
		case s == bySize:
			p.Height = Height{By: BySize}
		case s == byRule:
			p.Height = Height{By: ByRule}
		case s == largest:
			p.Height = Height{By: Largest}
		case !strings.ContainsAny(s, "0123456789½¼¾⅛⅜⅝⅞"):
			v.fault(suggest(s, []string{bySize, byRule, largest, "2 1/2in"}), "%s: %q is neither a length nor by size, by rule or largest", v.name, s)
		default:
			if l, ok := v.length(heights); ok {
				p.Height = Height{By: ByLength, Length: *l}
			}
		}
	}
}

func cased(to *Case) func(value) {
	return func(v value) {
		if s, ok := v.word("case", []string{"upper", "typed", "as typed"}); ok {
			*to, _ = spelling.ParseCase(s)
		}
	}
}

func (d *draft) outlines(p *piece) func(value) {
	return func(v value) {
		items, ok := v.items()
		if ok && len(items) > layers {
			items[layers].fault("", "%s: at most %d outlines lie round a piece", v.name, layers)
			return
		}
		for i, item := range items {
			item.name = fmt.Sprintf("%s: outline %d", p.Place, i+1)
			d.outline(p, item)
		}
	}
}

func (d *draft) outline(p *piece, v value) {
	out := Outline{Join: defaultJoin}
	join := outline.Round.String()
	found, ok := v.fields("{width: 1/8in, colour: white}", []field{
		{key: "width", read: func(v value) {
			if l, ok := v.length(widths); ok {
				out.Width = *l
			}
		}},
		{key: "colour", also: "color", read: func(v value) { set(&out.Colour)(v.colour(d.o.Colours)) }},
		{key: "join", read: word(&join, "join", []string{outline.Round.String(), outline.Mitre.String(), outline.Bevel.String()})},
	})
	if !ok {
		return
	}
	for _, need := range []string{"width", "colour"} {
		if _, given := found[need]; !given {
			v.keyFault("such as {width: 1/8in, colour: white}", "%s: %s is missing", v.name, need)
		}
	}
	out.Join, _ = outline.ParseJoin(join)
	p.Outlines = append(p.Outlines, out)
}
