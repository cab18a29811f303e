package ticket

import (
	"fmt"
	"regexp"
	"strings"

	"yokeline/lettering/order"
	"yokeline/lettering/pressing"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// planPress plans the press ticket: the steps and what to watch on the first
// page, then where everything goes, the platens and what keeps people safe.
func (d *document) planPress() ([]leaf, error) {
	p, err := d.newPlan()
	if err != nil {
		return nil, err
	}
	strips := append(d.warningStrips(p), d.bandStrips(p)...)
	guide, scale, err := d.guideStrips()
	if err != nil {
		return nil, err
	}
	strips = append(strips, guide...)
	strips = append(strips, d.platenStrips(p)...)
	strips = append(strips, d.cautionStrips()...)
	strips = append(strips, d.promptStrips()...)
	note := "Heat and time: " + typeset(d.in.Shop.Basis) + ". Temperatures are at the face of the cloth, not those of the display."
	if scale > 0 {
		note = fmt.Sprintf("%s The guide is drawn %s.", note, parts.Ratio(scale))
	}
	return d.flowed(PressTicket, strips, d.pressSentence(p), note), nil
}

// pressSentence says what is pressed how hot, hottest first.
func (d *document) pressSentence(p *plan) string {
	if len(p.steps) == 0 {
		return fmt.Sprintf("Nothing of this order is pressed: it is %s.", methodName(d.order.Method))
	}
	if len(p.warnings) > 0 && p.warnings[0].Level == pressing.Stop {
		return "Stop. Do not press this order as it stands: read what follows, and choose again."
	}
	hot := p.steps[0]
	words := fmt.Sprintf("%s on each %s of %s, at %s for %g s", counted(len(p.steps), "press"), each(d.noun()), p.cloth, degrees(hot.Celsius), hot.Seconds)
	if p.steps[len(p.steps)-1].Celsius < hot.Celsius {
		words += " and cooler, the hottest first"
	}
	if len(p.steps) > 1 {
		words += ". Keep to the order of the steps"
	}
	return typeset(words + ".")
}

func methodName(id string) string {
	if m, ok := order.LookupMethod(id); ok {
		return m.Name
	}
	return id
}

// degrees prints a temperature in both units.
func degrees(celsius float64) string { return typeset(pressing.Degrees(celsius)) }

// standingHigh is what the standing line takes at the top of every press ticket,
// mm.
const standingHigh = 12.0

// standing sets the line that stands on every press ticket in a bar of ink.
func (f *frame) standing() {
	const bar = 9.0
	f.FillRect(f.Left, f.Top, f.Live(), bar, parts.Ink)
	text := typeset(pressing.Standing)
	t, _ := parts.Shrunk(f.Pen, parts.Heading().In(page.White), parts.Caption().Size, f.Live()-8, text)
	f.say(f.Left+4, f.Top+bar/2+1.4, t, text)
}

// titleStrip heads a part of a page: a rule, its title and a remark.
func (d *document) titleStrip(title, remark string) strip {
	return strip{high: 8.2, keep: true, draw: func(f *frame, y float64) error {
		f.rule(y, parts.Ink, parts.Outline)
		spans := []page.Span{parts.GroupTitle().Sized(10).Span(title)}
		if remark != "" {
			spans = append(spans, parts.Caption().In(parts.Slate).Span("   "+remark))
		}
		f.Spans(f.Left, y+5.2, page.Start, spans...)
		return nil
	}}
}

// warningStrips are what to know before anything is pressed.
func (d *document) warningStrips(p *plan) []strip {
	if len(p.warnings) == 0 {
		return nil
	}
	var out []strip
	for i, w := range p.warnings {
		s := d.warningStrip(w)
		s.keep = i < len(p.warnings)-1
		out = append(out, s)
	}
	return append(out, space(2))
}

// warningStrip is one warning with its mark, its remedy and its basis.
func (d *document) warningStrip(w pressing.Warning) strip {
	const indent, wordRoom = 5.0, 18.0
	mark, colour, word := parts.Advice, parts.Ink, "look out"
	switch w.Level {
	case pressing.Stop:
		mark, colour, word = parts.Broken, parts.Decide, "stop"
	case pressing.Think:
		word = "note"
	}
	bold, text := parts.TableText().Bold(), parts.Caption()
	width := d.grid.Live() - indent - wordRoom
	title := typeset(sentence(w.Text)) + "."
	rest := typeset(fmt.Sprintf("%s. (%s)", sentence(w.Remedy), w.Basis))
	n, m := d.lines(bold, width, title), d.lines(text, width, rest)
	return strip{high: high(bold, n) + high(text, m) + 2.4, draw: func(f *frame, y float64) error {
		parts.ResultMark(f.Pen, f.Left+parts.ResultRadius, y+2.6, parts.ResultRadius, mark, colour)
		f.say(f.Left+indent, y+3.6, bold.In(colour), word)
		next := f.paragraph(f.Left+indent+wordRoom, y+3.6, width, bold, title)
		f.paragraph(f.Left+indent+wordRoom, next-0.4, width, text.In(parts.Slate), rest)
		return nil
	}}
}

// band is the steps, next to each other in the order, that are pressed alike.
type band struct {
	first int // number of its first step, from 0
	steps []step
}

// bands puts steps together that have one setting, heat and time.
func (p *plan) bands() []band {
	var out []band
	for i, s := range p.steps {
		if k := len(out) - 1; k >= 0 {
			last := out[k].steps[0]
			if last.Setting.Name() == s.Setting.Name() && last.Celsius == s.Celsius && last.Seconds == s.Seconds {
				out[k].steps = append(out[k].steps, s)
				continue
			}
		}
		out = append(out, band{i, []step{s}})
	}
	return out
}

// bandStrips are the presses in their order.
func (d *document) bandStrips(p *plan) []strip {
	var out []strip
	if d.order.Method == pressing.Unpressed {
		out = append(out, d.unpressedStrip())
	}
	for _, b := range p.bands() {
		s := d.bandStrip(b)
		s.keep = true
		out = append(out, s)
		for i := range b.steps {
			row := d.stepStrip(b, i)
			row.keep = i < len(b.steps)-1
			out = append(out, row)
		}
		out = append(out, space(2))
	}
	return append(out, d.clothStrips(p)...)
}

// clothStrips say how hot the cloth may get, and which other settings would do.
func (d *document) clothStrips(p *plan) []strip {
	t := parts.Caption()
	var out []strip
	put := func(t parts.Type, text string) {
		text = typeset(text)
		n := d.lines(t, d.grid.Live(), text)
		out = append(out, strip{high: high(t, n) + 1.2, draw: func(f *frame, y float64) error {
			f.paragraph(f.Left, y+1.6, f.Live(), t, text)
			return nil
		}})
	}
	if len(p.steps) > 0 {
		put(t.Bold(), ceilingWords(p.cloth, p.ceiling))
	}
	if words := otherWords(p.others, p.ceiling); words != "" {
		put(t.In(parts.Slate), "Other settings for this cloth: "+words+". Take the one that the data sheet of your film names.")
	}
	return append(out, space(2))
}

// unpressedStrip says that the lettering itself sees no press.
func (d *document) unpressedStrip() strip {
	return strip{high: 7, draw: func(f *frame, y float64) error {
		f.say(f.Left, y+3.4, parts.TableText(), "The "+methodName(d.order.Method)+" is not pressed. To smooth it, press from the back under a cloth, no hotter than the garment stands.")
		return nil
	}}
}

// ceilingWords say how much heat cloth stands.
func ceilingWords(c pressing.Cloth, k pressing.Ceiling) string {
	if k.BlockerLifts {
		return fmt.Sprintf("%s: over %s only with a blocker, and never over %s: %s.", sentence(c.String()), degrees(k.Warn), degrees(k.Stop), k.Why)
	}
	return fmt.Sprintf("%s: take care over %s, and never over %s: %s.", sentence(c.String()), degrees(k.Warn), degrees(k.Stop), k.Why)
}

// otherWords lists the settings that the cloth stands, no hotter than it does.
func otherWords(all []pressing.Setting, k pressing.Ceiling) string {
	var out []string
	for _, s := range all {
		most := k.Warn
		if k.BlockerLifts && s.Blocker() {
			most = k.Stop
		}
		if s.FromC < most {
			out = append(out, fmt.Sprintf("%s, %s for %s", s.Variant, ranged(s.FromC, min(s.ToC, most), "°C"), ranged(s.FromS, s.ToS, "s")))
		}
	}
	return strings.Join(out, "; ")
}

// ranged prints a range of figures.
func ranged(from, to float64, unit string) string {
	if from == to {
		return fmt.Sprintf("%.0f\u00a0%s", from, unit)
	}
	return fmt.Sprintf("%.0f–%.0f\u00a0%s", from, to, unit)
}

// The band of a setting, mm.
const (
	bandHeat    = 0.0
	bandTime    = 68.0
	bandForce   = 100.0
	bandWhat    = 146.0
	bandBig     = 9.2 // to the baseline of the large figures
	bandSmall   = 13.6
	bandDetails = 19.6
	bandRow     = 6.6
	stepRow     = 6.4
	stepName    = 9.0
	stepLayers  = 74.0
)

// detail is one thing to do at a press.
type detail struct {
	x           float64
	label, text string
}

func details(set pressing.Setting) []detail {
	cover := "none"
	if set.Cover {
		cover = "yes, over the art"
	}
	return []detail{
		{bandHeat, "pre-press, to drive out moisture", dashed(set.PrePress)}, {bandTime, "cover sheet", cover},
		{bandForce, "peel", set.Peel}, {bandWhat, "second press", dashed(set.Second)},
	}
}

// bandStrip draws a setting: heat, time and pressure large, then what to do
// before and after.
func (d *document) bandStrip(b band) strip {
	t := parts.Value()
	all := details(b.steps[0].Setting)
	room := func(i int) float64 {
		if i+1 < len(all) {
			return all[i+1].x - all[i].x - 3
		}
		return d.grid.Live() - all[i].x
	}
	most := 1
	for i, one := range all {
		most = max(most, d.lines(t, room(i), one.text))
	}
	return strip{high: bandDetails + bandRow + high(t, most-1), draw: func(f *frame, y float64) error {
		f.rule(y, parts.Ink, parts.Outline)
		f.bandFigures(b.steps[0], y)
		for i, one := range all {
			f.say(f.Left+one.x, y+bandDetails, parts.Label(), one.label)
			f.paragraph(f.Left+one.x, y+bandDetails+3.6, room(i), t, one.text)
		}
		return nil
	}}
}

func (f *frame) bandFigures(s step, y float64) {
	big, mid, small := parts.PageTitle(), parts.BigNumber(), parts.Label()
	big.Tracking = 0
	set := s.Setting
	w := f.say(f.Left+bandHeat, y+bandBig, big, fmt.Sprintf("%.0f °C", s.Celsius))
	f.say(f.Left+bandHeat+w+3, y+bandBig, mid, fmt.Sprintf("%.0f °F", pressing.Fahrenheit(s.Celsius)))
	f.say(f.Left+bandHeat, y+bandSmall, small, fmt.Sprintf("within %s, %s", ranged(set.FromC, set.ToC, "°C"), ranged(pressing.Fahrenheit(set.FromC), pressing.Fahrenheit(set.ToC), "°F")))
	f.say(f.Left+bandTime, y+bandBig, big, fmt.Sprintf("%g s", s.Seconds))
	f.say(f.Left+bandTime, y+bandSmall, small, "within "+ranged(set.FromS, set.ToS, "s"))
	f.fitted(f.Left+bandForce, y+bandBig, bandWhat-bandForce-3, mid, set.Pressure)
	f.say(f.Left+bandForce, y+bandSmall, small, "pressure: "+pressureWords(set.Pressure))
	what := set.Methods[0]
	if m, ok := order.LookupMethod(what); ok {
		what = m.Name
	}
	f.fitted(f.Left+bandWhat, y+bandBig, f.Live()-bandWhat, parts.GroupTitle(), sentence(what))
	if set.Variant != "" {
		f.fitted(f.Left+bandWhat, y+bandSmall, f.Live()-bandWhat, small, set.Variant)
	}
}

// stepStrip is one press of a band: its number, what is pressed, and its layers.
func (d *document) stepStrip(b band, i int) strip {
	s := b.steps[i]
	title := sentence(s.Place)
	if len(s.places) > 0 {
		title = spotTitle(spot{s.side, s.places})
	}
	layers := layerWords(s)
	t := parts.TableText()
	n := max(1, d.lines(t, d.grid.Live()-stepLayers, layers))
	return strip{high: stepRow + high(t, n-1), draw: func(f *frame, y float64) error {
		base := y + 4.5
		f.Line(f.Left, y, f.Right, y, parts.Rule, page.Line{Weight: parts.Hair})
		f.say(f.Left, base, parts.Heading(), fmt.Sprint(b.first+i+1))
		f.fitted(f.Left+stepName, base, stepLayers-stepName-3, parts.Heading(), title)
		f.paragraph(f.Left+stepLayers, base, f.Live()-stepLayers, t, layers)
		return nil
	}}
}

// spotTitle names what is pressed at once: Back: name and number.
func spotTitle(s spot) string {
	words := make([]string, len(s.places))
	for i, p := range s.places {
		words[i] = thing(p)
		if strings.Contains(string(p), "sleeve") {
			return sentence(string(p))
		}
	}
	return sentence(s.side.String()) + ": " + list(words)
}

// pressureWords say how a pressure feels at the handle: common practice, no
// source.
func pressureWords(word string) string {
	switch word {
	case "light":
		return "closes with one finger"
	case "light-medium":
		return "closes easily"
	case "medium":
		return "closes firmly, two hands"
	case "medium-firm", "firm":
		return "closes hard, two hands"
	}
	return "see the data sheet"
}

// layerWords says how long each film is pressed.
func layerWords(s step) string {
	at := ""
	if len(s.places) > 1 {
		at = "all at once"
	}
	if len(s.layers) < 2 {
		return at
	}
	var out []string
	for i, l := range s.layers {
		if i < len(s.layers)-1 {
			out = append(out, fmt.Sprintf("%s %s", l, dashed(pressing.Tack)))
			continue
		}
		out = append(out, fmt.Sprintf("%s on top %g\u00a0s", l, s.Seconds))
	}
	if at != "" {
		at += ": "
	}
	return at + strings.Join(out, ", then ")
}

var figuresApart = regexp.MustCompile(`(\d)-(\d+) s`)

// dashed sets a range of seconds with a dash.
func dashed(text string) string { return figuresApart.ReplaceAllString(text, "$1–$2\u00a0s") }
