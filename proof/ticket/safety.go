package ticket

import (
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/pressing"
	"yokeline/proof/parts"
)

// platenStrips say on which platen each size is pressed and what is padded.
func (d *document) platenStrips(p *plan) []strip {
	if len(p.rows) == 0 {
		return nil
	}
	columns := [...]float64{0, 38, 78, 118}
	head := strip{high: 5.4, keep: true, draw: func(f *frame, y float64) error {
		for i, text := range [...]string{"Pressed", "Sizes", "Platen", "Keep off, pad or drape"} {
			f.say(f.Left+columns[i], y+2.6, parts.Note(), text)
		}
		f.rule(y+4.4, parts.Ink, parts.Hair)
		return nil
	}}
	out := []strip{d.titleStrip("Platen and seams", "centre the platen on the art; a seam under it holds it off the film"), head}
	for i, r := range p.rows {
		s := d.platenRow(r, columns[:])
		s.head, s.keep = &head, len(p.rows) <= keptRows && i < len(p.rows)-1
		out = append(out, s)
	}
	return append(out, space(4))
}

func (d *document) platenRow(r pressedRow, columns []float64) strip {
	t := parts.Caption()
	room := func(i int) float64 {
		if i+1 < len(columns) {
			return columns[i+1] - columns[i] - 3
		}
		return d.grid.Live() - columns[i]
	}
	art := ""
	if len(r.art) > 0 {
		remedy := "Pad round it."
		if r.behind {
			remedy = "Slip the " + d.noun() + " over the platen."
		}
		art = "UNDER THE ART: " + strings.Join(r.art, ", ") + ". " + remedy
	}
	near := "Nothing"
	if len(r.near) > 0 {
		near = sentence(strings.Join(r.near, ", "))
	} else if art != "" {
		near = ""
	}
	texts := []string{r.what, d.sizeList(r.sizes), r.platen, near}
	if r.presses == 0 {
		texts[2] = "No platen takes it, not even in two presses. Ask before you press."
	}
	most := 0
	style := func(i int) parts.Type {
		if i == 2 && r.presses != 1 || i == 0 {
			return t.Bold()
		}
		return t
	}
	for i, text := range texts {
		n := d.lines(style(i), room(i), text)
		if i == 3 && art != "" {
			if near == "" {
				n = 0
			}
			n += d.lines(t.Bold(), room(i), art)
		}
		most = max(most, n)
	}
	return strip{high: high(t, most) + 2.2, draw: func(f *frame, y float64) error {
		for i, text := range texts {
			base := y + 3.4
			if i == 3 && art != "" {
				base = f.paragraph(f.Left+columns[i], base, room(i), t.Bold(), art)
			}
			if text != "" {
				f.paragraph(f.Left+columns[i], base, room(i), style(i), text)
			}
		}
		f.rule(y+high(t, most)+2.2, parts.Rule, parts.Hair)
		return nil
	}}
}

// sizeList names sizes: all sizes, or S, M, L.
func (d *document) sizeList(all []garment.Size) string {
	if len(d.in.Count.Blanks) == len(all) && len(all) > 1 {
		return "all sizes"
	}
	var out []string
	for _, s := range all {
		out = append(out, d.sizeLabel(s))
	}
	return strings.Join(out, ", ")
}

// cautionStrips are the cautions in plain words, in two columns.
func (d *document) cautionStrips() []strip {
	all := append(pressing.Cautions()[1:], pressing.Care) // the first is the standing line of the page
	t := parts.TableText()
	width := (d.grid.Live() - parts.Gutter) / 2
	const indent, apart = 4.0, 1.6
	half := (len(all) + 1) / 2
	column := func(texts []string) float64 {
		sum := 0.0
		for _, text := range texts {
			sum += high(t, d.lines(t, width-indent, typeset(text))) + apart
		}
		return sum
	}
	tall := max(column(all[:half]), column(all[half:]))
	return []strip{d.titleStrip("Keep safe", ""), {high: tall + 3, draw: func(f *frame, y float64) error {
		for c, texts := range [...][]string{all[:half], all[half:]} {
			x, base := f.Left+float64(c)*(width+parts.Gutter), y+2.2
			for _, text := range texts {
				f.FillRect(x, base-1.9, 1.6, 1.6, parts.Ink)
				base = f.paragraph(x+indent, base, width-indent, t, typeset(text)) + apart
			}
		}
		return nil
	}}}
}

// promptStrips are reminders of the law of the market.
func (d *document) promptStrips() []strip {
	known, prompts := d.prompts()
	market, _ := d.market()
	w := d.wearer()
	who := "adults"
	switch {
	case w.UnderFour:
		who = "children of 3 and under"
	case w.Child && d.in.Wearer == nil && d.order.Wearer == "":
		who = "children too, as there are youth sizes"
	case w.Child:
		who = "children of 12 and under"
	}
	remark := "prompts to look up, no legal advice"
	text := ""
	switch {
	case !known:
		text = "The job does not say where these garments are sold. Write market: US, EU or other, and wearer: adult, child or toddler, for the reminders that go with it."
	case market == pressing.Other:
		text = "For this market there are no reminders here: look up your local rules."
	case len(prompts) == 0:
		text = "For garments meant for " + who + " in the " + string(market) + " there is no reminder here: look up your local rules all the same."
	default:
		remark = "sold in the " + string(market) + ", meant for " + who + ": " + remark
	}
	out := []strip{d.titleStrip("What the law may ask", remark)}
	if text != "" {
		t := parts.TableText()
		n := d.lines(t, d.grid.Live(), text)
		return append(out, strip{high: high(t, n) + 2, draw: func(f *frame, y float64) error {
			f.paragraph(f.Left, y+2.2, f.Live(), t, text)
			return nil
		}})
	}
	for _, p := range prompts {
		out = append(out, d.promptStrip(p))
	}
	out[len(out)-2].keep = true
	return out
}

// promptStrip is one reminder with a box to tick once it is looked after.
func (d *document) promptStrip(w pressing.Warning) strip {
	const indent = 6.0
	t, rest := parts.TableText(), parts.Caption().In(parts.Slate)
	width := d.grid.Live() - indent
	text := typeset(sentence(w.Text)) + ": " + typeset(w.Remedy) + "."
	basis := typeset(w.Basis)
	n, m := d.lines(t, width, text), d.lines(rest, width, basis)
	return strip{high: high(t, n) + high(rest, m) + 2.2, draw: func(f *frame, y float64) error {
		parts.OpenBox(f.Pen, f.Left, y, parts.BoxSize)
		f.Paragraph(f.Left+indent, f.paragraph(f.Left+indent, y+2.9, width, t, text)-0.3, width, rest.Leading, rest.Style, basis)
		return nil
	}}
}
