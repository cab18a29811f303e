package ticket

import (
	"fmt"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/tally"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// planCounts plans the page of counts: garments, materials, pieces, characters.
func (d *document) planCounts() ([]leaf, error) {
	c := d.in.Count
	strips := d.blankStrips()
	strips = append(strips, d.materialStrips()...)
	strips = append(strips, d.sizeStrips()...)
	strips = append(strips, d.kitStrips()...)
	strips = append(strips, d.noteStrips()...)
	garments := 0
	for _, b := range c.Blanks {
		garments += b.Count
	}
	text := fmt.Sprintf("%s in %s, %s for %s.", plural(garments, d.noun()), plural(len(c.Blanks), "size"), plural(c.Pieces, "piece"), plural(c.Players, "player"))
	if n := len(c.ToAsk); n > 0 {
		text += fmt.Sprintf(" %s to ask for before anything is ordered.", sentence(plural(n, "size")))
	}
	return d.flowed(Counts, strips, text, "Counted on the shapes as they were sized. Spare garments and test pieces are not in it, but for the allowance of material."), nil
}

// The tiles of counts, mm.
const (
	blankWide, blankHigh = 18.0, 14.6
	charWide, charHigh   = 10.4, 10.8
	tableRow             = 5.0
	tableHead            = 5.6
)

// blankStrips are the garments to order, a tile a size, and the sizes to ask for.
func (d *document) blankStrips() []strip {
	info := string(d.order.Garment.Cut)
	if i, ok := d.order.Garment.Cut.Info(); ok {
		info, _, _ = strings.Cut(i.Title, ",")
	}
	out := []strip{d.titleStrip("Blank garments", lowerFirst(info)+", "+d.clothWords())}
	perRow := int(d.grid.Live() / blankWide)
	all := d.in.Count.Blanks
	for from := 0; from < len(all); from += perRow {
		row := all[from:min(len(all), from+perRow)]
		out = append(out, strip{high: blankHigh, draw: func(f *frame, y float64) error {
			for i, b := range row {
				x := f.Left + blankWide*float64(i)
				f.FillRect(x, y, blankWide-2, blankHigh-2, parts.Tile)
				big := parts.BigNumber().To(page.Middle)
				f.say(x+blankWide/2-1, y+6, big, fmt.Sprint(b.Count))
				f.fitted(x+blankWide/2-1, y+10.4, blankWide-3, parts.Caption().To(page.Middle), sizeWords(b.Size))
			}
			return nil
		}})
	}
	if n := len(d.in.Count.ToAsk); n > 0 {
		out = append(out, d.askStrip(n))
	}
	return append(out, space(3))
}

// askStrip names those whose size is not known.
func (d *document) askStrip(n int) strip {
	var who []string
	for _, i := range d.in.Count.ToAsk {
		p := d.in.Count.Picks[i]
		label := p.Label
		if p.Number != "" {
			label += " (" + p.Number + ")"
		}
		who = append(who, label)
	}
	t := parts.TableText()
	text := list(who) + ": nothing is counted or made for them yet."
	const indent = 34.0
	lines := d.lines(t, d.grid.Live()-indent, text)
	return strip{high: high(t, lines) + 2, draw: func(f *frame, y float64) error {
		parts.ResultMark(f.Pen, f.Left+parts.ResultRadius, y+1.9, parts.ResultRadius, parts.NotChecked, parts.Decide)
		f.say(f.Left+5, y+2.9, t.Bold().In(parts.Decide), plural(n, "size")+" to ask for")
		f.paragraph(f.Left+indent, y+2.9, f.Live()-indent, t, text)
		return nil
	}}
}

// tableStrips are a head and rows; the first column is set from the left, the
// others end at their right edges.
func (d *document) tableStrips(heads []string, ends []float64, rows [][]string, bold int) []strip {
	put := func(f *frame, y float64, t parts.Type, cells []string) {
		for i, text := range cells {
			style := t
			if i == bold || i == 0 {
				style = t.Bold()
			}
			if i > 0 {
				style = style.To(page.End)
			}
			x := f.Left
			if i > 0 {
				x += ends[i]
			}
			f.say(x, y, style, text)
		}
	}
	head := strip{high: tableHead, keep: true, draw: func(f *frame, y float64) error {
		for i, text := range heads {
			t, x := parts.Note(), f.Left
			if i > 0 {
				t, x = t.To(page.End), x+ends[i]
			}
			f.say(x, y+2.8, t, text)
		}
		f.rule(y+4.4, parts.Ink, parts.Hair)
		return nil
	}}
	out := []strip{head}
	for _, cells := range rows {
		out = append(out, strip{high: tableRow, head: &head, draw: func(f *frame, y float64) error {
			put(f, y+2.7, parts.TableText(), cells)
			f.rule(y+tableRow-0.8, parts.Rule, parts.Hair)
			return nil
		}})
	}
	return out
}

// materialStrips are how much film, cloth or transfer is taken.
func (d *document) materialStrips() []strip {
	c := d.in.Count
	remark := ""
	var rows [][]string
	for _, m := range c.Materials {
		row := []string{sentence(m.Name()), fmt.Sprint(m.Shapes), d.area(m.Ink), d.area(m.Box), "–", "–", "–"}
		if m.Roll > 0 {
			row[4] = d.length(m.Roll)
		}
		if m.Length > 0 {
			row[5], row[6] = d.whole(m.Length), d.bought(m.WithAllowance)
			remark = fmt.Sprintf("allowance %.0f\u00a0%% (common practice, no source)", 100*c.Allowance)
		}
		if m.TooWide {
			row[4] += ", too narrow"
		}
		rows = append(rows, row)
	}
	if len(rows) == 0 {
		return nil
	}
	live := d.grid.Live()
	ends := []float64{0, 66, 90, 114, live - 50, live - 26, live}
	out := []strip{d.titleStrip("Material", remark)}
	out = append(out, d.tableStrips([]string{"Material", "shapes", "true area", "box area", "roll", "length", "with allowance"}, ends, rows, 6)...)
	return append(out, space(3))
}

// sizeStrips are the pieces of each place on each size, with their sums.
func (d *document) sizeStrips() []strip {
	places := d.worn()
	if len(places) == 0 {
		return nil
	}
	heads, ends := []string{"Size"}, []float64{0}
	each := min(34, (d.grid.Live()-30)/float64(len(places)+1))
	for i, p := range places {
		heads, ends = append(heads, string(p)), append(ends, 30+each*float64(i+1)-2)
	}
	heads, ends = append(heads, "pieces"), append(ends, 30+each*float64(len(places)+1)-2)
	of := map[garment.Size]map[order.Place]int{}
	sums := make([]int, len(places))
	for _, r := range d.in.Count.Sizes {
		if of[r.Size] == nil {
			of[r.Size] = map[order.Place]int{}
		}
		of[r.Size][r.Place] = r.Pieces
	}
	var rows [][]string
	for _, b := range d.in.Count.Blanks {
		row, sum := []string{sentence(sizeWords(b.Size))}, 0
		for i, p := range places {
			n := of[b.Size][p]
			sums[i] += n
			sum += n
			row = append(row, fmt.Sprint(n))
		}
		rows = append(rows, append(row, fmt.Sprint(sum)))
	}
	last := []string{"All sizes"}
	for _, n := range sums {
		last = append(last, fmt.Sprint(n))
	}
	rows = append(rows, append(last, fmt.Sprint(d.in.Count.Pieces)))
	out := []strip{d.titleStrip("Pieces", "by size and place")}
	return append(append(out, d.tableStrips(heads, ends, rows, len(heads)-1)...), space(3))
}

// kitStrips are the characters: of those as the face has them a tile each, of the
// others, which have to be cut, a line.
func (d *document) kitStrips() []strip {
	var plain, made []tally.Kit
	for _, k := range d.in.Count.Kits {
		if k.Form == "" {
			plain = append(plain, k)
		} else {
			made = append(made, k)
		}
	}
	var out []strip
	if len(plain) > 0 {
		out = append(out, d.titleStrip("Digits and letters", "for picking from stock kits; 6 and 9 apart, exactly as they are cut"))
		for _, k := range plain {
			out = append(out, d.kitStrip(k)...)
		}
	}
	if len(made) > 0 {
		out = append(out, d.titleStrip("To be cut", "no stock kit has them so"))
		for _, k := range made {
			out = append(out, d.kitLine(k))
		}
	}
	return append(out, space(2))
}

// kitWords says what a kit is.
func (d *document) kitWords(k tally.Kit) (title, rest string) {
	rest = fmt.Sprintf("%s · %s", d.length(k.Height), tally.ColourWords(k.Colour, k.Outlines))
	if k.Form != "" {
		rest += " · " + k.Form
	}
	return sentence(k.Kind) + ", " + sentence(k.Face), rest + " · " + fmt.Sprintf("%d in all", k.Total)
}

func (d *document) kitStrip(k tally.Kit) []strip {
	title, rest := d.kitWords(k)
	out := []strip{{high: 5.2, keep: true, draw: func(f *frame, y float64) error {
		f.Spans(f.Left, y+3, page.Start, parts.Value().Span(title), parts.Caption().In(parts.Slate).Span("   "+rest))
		return nil
	}}}
	perRow := int(d.grid.Live() / charWide)
	for from := 0; from < len(k.Counts); from += perRow {
		row := k.Counts[from:min(len(k.Counts), from+perRow)]
		out = append(out, strip{high: charHigh, draw: func(f *frame, y float64) error {
			for i, c := range row {
				x := f.Left + charWide*float64(i)
				f.StrokeRect(x+0.1, y, charWide-1.6, charHigh-1.8, parts.Rule, page.Line{Weight: parts.Hair})
				f.say(x+1.2, y+5.4, parts.Heading(), c.Text)
				f.say(x+charWide-2.6, y+7.6, parts.Caption().To(page.End), fmt.Sprint(c.Count))
			}
			return nil
		}})
	}
	out[len(out)-1].high += 1.4
	return out
}

func (d *document) kitLine(k tally.Kit) strip {
	title, rest := d.kitWords(k)
	var words []string
	for _, c := range k.Counts {
		words = append(words, fmt.Sprintf("%s\u00a0%d", c.Text, c.Count))
	}
	t := parts.Caption()
	text := strings.Join(words, "   ")
	n := d.lines(t, d.grid.Live(), text)
	return strip{high: 4 + high(t, n) + 1.6, draw: func(f *frame, y float64) error {
		f.Spans(f.Left, y+2.8, page.Start, parts.Value().Span(title), t.In(parts.Slate).Span("   "+rest))
		f.paragraph(f.Left, y+6.6, f.Live(), t, text)
		return nil
	}}
}

// noteStrips say how it was counted.
func (d *document) noteStrips() []strip {
	t := parts.Caption()
	out := []strip{d.titleStrip("How it was counted", "")}
	for _, note := range d.in.Count.Notes {
		n := d.lines(t, d.grid.Live(), typeset(note))
		out = append(out, strip{high: high(t, n) + 1, draw: func(f *frame, y float64) error {
			f.paragraph(f.Left, y+2, f.Live(), t, typeset(note))
			return nil
		}})
	}
	return out
}
