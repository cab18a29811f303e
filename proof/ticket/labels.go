package ticket

import (
	"fmt"
	"strings"

	"yokeline/lettering/tally"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// The grid of bag labels, mm.
const (
	labelColumns = 3
	labelHigh    = 35.7 // six rows on Letter
	labelPad     = 3.4
	labelTick    = 3.0 // of a cut mark
	labelNumber  = 12.4
	labelNames   = 19.6
	labelLine    = 4.9
	labelFoot    = 2.9 // above the lower edge to the last line
	labelLeast   = 9.0 // pt, of a name before it breaks
)

// labelName is the name on a label: wide, so that each letter is read.
func labelName() parts.Type { return parts.RowName().Sized(13) }

// planLabels plans the bag labels: a grid to cut apart, one label a player.
func (d *document) planLabels() ([]leaf, error) {
	picks := d.in.Count.Picks
	rows := int((d.grid.Bottom - d.grid.Top - footClear) / labelHigh)
	each := rows * labelColumns
	pages := (len(picks) + each - 1) / each
	var out []leaf
	for k := range pages {
		title := BagLabels.String()
		if pages > 1 {
			title = fmt.Sprintf("%s, %d of %d", title, k+1, pages)
		}
		from, to := k*each, min(len(picks), (k+1)*each)
		out = append(out, leaf{
			title: title, sentence: fmt.Sprintf("%s in the order of the roster. Cut along the lines.", plural(len(picks), "label")),
			note: "One label a player: put it in the bag with the finished " + d.noun() + ".",
			draw: func(f *frame) error { return f.labels(picks[from:to], from) },
		})
	}
	return out, nil
}

func (f *frame) labels(picks []tally.Pick, first int) error {
	wide := f.Live() / labelColumns
	rows := (len(picks) + labelColumns - 1) / labelColumns
	for i, p := range picks {
		f.label(f.Left+wide*float64(i%labelColumns), f.Top+labelHigh*float64(i/labelColumns), wide, p, first+i)
	}
	cut := page.Line{Weight: parts.Hair, Dash: []float64{1.6, 1.2}}
	for r := range rows + 1 {
		n := labelColumns
		if full := len(picks) / labelColumns; r > full {
			n = len(picks) % labelColumns
		}
		y := f.Top + labelHigh*float64(r)
		f.Line(f.Left, y, f.Left+wide*float64(min(n, len(picks))), y, parts.Rule, cut)
	}
	for c := range labelColumns + 1 {
		n := rows
		if c > 0 && c > (len(picks)-1)%labelColumns+1 {
			n = rows - 1
		}
		if n > 0 {
			f.Line(f.Left+wide*float64(c), f.Top, f.Left+wide*float64(c), f.Top+labelHigh*float64(n), parts.Rule, cut)
		}
	}
	return nil
}

// label draws one label with its top left corner at x, y.
func (f *frame) label(x, y, wide float64, p tally.Pick, index int) {
	inner := wide - 2*labelPad
	big := parts.PageTitle().Sized(27)
	big.Tracking = 0
	number := p.Number
	if number == "" {
		number, big = "no number", parts.Sentence().In(parts.Slate)
	}
	big, _ = parts.Shrunk(f.Pen, big, parts.Sentence().Size, inner*0.62, number)
	f.say(x+labelPad, y+labelNumber, big, number)
	size := parts.BigNumber().To(page.End)
	if p.Known {
		f.say(x+wide-labelPad, y+labelNumber, size, p.Size.Letter)
		f.say(x+wide-labelPad, y+labelNumber-6.2, parts.Label().To(page.End), groupWord(p))
	} else {
		f.say(x+wide-labelPad, y+labelNumber, parts.Heading().To(page.End).In(parts.Decide), "size?")
	}
	f.labelNames(x+labelPad, y+labelNames, inner, p)
	base := y + labelHigh - labelFoot
	order := f.order.Number
	if order != "" {
		order = "order " + order
	}
	count := fmt.Sprintf("%d of %d", index+1, f.in.Count.Players)
	f.say(x+wide-labelPad, base, parts.Label().To(page.End), count)
	room := inner - f.Width(parts.Label().Style, count) - 2
	last := strings.Trim(order+" · "+plural(len(p.Pieces), "piece"), " ·")
	f.say(x+labelPad, base, parts.Label(), parts.Shortened(f.Pen, parts.Label(), room, last))
	team := parts.Caption().Bold()
	room = inner
	if f.in.Unsigned {
		stamp := parts.Value().In(parts.Decide).To(page.End)
		f.say(x+wide-labelPad, base-3.4, stamp, unsignedWord)
		room -= f.Width(stamp.Style, unsignedWord) + 2
	}
	f.say(x+labelPad, base-3.4, team, parts.Shortened(f.Pen, team, room, f.order.Team))
}

func groupWord(p tally.Pick) string {
	words := sizeWords(p.Size)
	return strings.TrimSuffix(words, " "+p.Size.Letter)
}

// labelNames sets the name, and the player's full name where it says more. Names
// are never shortened: they get smaller, then break.
func (f *frame) labelNames(x, y, inner float64, p tally.Pick) {
	t, text := labelName(), p.Name
	if text == "" {
		t, text = parts.Sentence(), p.Label
	}
	if small, fits := f.shrunk(t, labelLeast, inner, text); fits {
		t = small
	} else {
		t = t.Sized(labelLeast)
	}
	lines := f.book.Wrap(t.Style, inner, text)
	step := labelLine
	if len(lines) > 1 {
		step = 3.7
		y -= 1.2
	}
	for k, line := range lines {
		f.say(x, y+step*float64(k), t, line)
	}
	if p.Label != text && p.Name != "" && len(lines) < 3 {
		f.fitted(x, y+step*float64(len(lines)-1)+3.7, inner, parts.Note(), p.Label)
	}
}
