package sheets

import (
	"bytes"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/order"
	"yokeline/proof/page"
)

var update = flag.Bool("update", false, "write the golden files anew")

const (
	backNameLine  = "  back name: {face: oswald, height: 1 3/4in, shape: radial arch, radius: 14in, colour: egret}\n"
	frontNameLine = "  front name: {text: Herons, face: yellowtail, case: typed, height: 3 1/4in, colour: egret, outlines: [{width: 3/16in, colour: marsh gold}]}\n"
	threeOnM      = "Name on back,Number,Size\nHalvorsen,17,M\nBrightwater,21,M\nO’Rourke,3,M\n"
)

// metric turns the sample job into centimetres.
func metric() []string {
	return []string{
		"units: in", "units: cm", "1 3/4in", "45mm", "radius: 14in", "radius: 360mm", "height: 8in", "height: 200mm",
		"3/16in", "5mm", "3 1/4in", "80mm", "height: 3in", "height: 75mm", "3/32in", "2.5mm", "1 3/8in", "35mm",
	}
}

func lightShirt() []string {
	return []string{`tidewater: "#1d3b53"`, `tidewater: "#fffffe"`, `egret: "#fbf7ec"`, `egret: "#1d3b53"`}
}

func demoInput(t testing.TB) Input {
	t.Helper()
	name, files := order.Demo()
	read := func(name string) string {
		b, err := fs.ReadFile(files, name)
		require.NoError(t, err)
		return string(b)
	}
	return inputOf(t, read(name), read("roster.csv"))
}

// lookInputs are orders that between them use all that page 1 can show.
func lookInputs() map[string]func(testing.TB) Input {
	from, to := strings.Index(sampleJob, "  back name"), strings.Index(sampleJob, "fit:")
	pieces := sampleJob[from:to]
	sixColours := "marsh gold: \"#e2a336\"\n  red: \"#c22020\"\n  black: \"#101010\"\n  sky: \"#88bbee\""
	sample := func(pairs ...string) func(testing.TB) Input {
		return func(t testing.TB) Input { t.Helper(); return sampleInput(t, pairs...) }
	}
	of := func(roster string, pairs ...string) func(testing.TB) Input {
		return func(t testing.TB) Input { t.Helper(); return inputOf(t, edited(t, sampleJob, pairs), roster) }
	}
	return map[string]func(testing.TB) Input{
		"sample": sample(),
		"one":    of(threeOnM),
		"light":  sample(lightShirt()...),
		"metric": sample(metric()...),
		"tank":   sample("cut: v-neck", "cut: basketball-tank", "sport: softball", "sport: basketball", frontNameLine, ""),
		"racer":  sample("cut: v-neck", "cut: racerback-tank", frontNameLine, "", backNameLine, ""),
		"hockey": sample("cut: v-neck, group: women", "cut: hockey, group: adult", "sport: softball", "sport: hockey"),
		"hockey cm": sample(append(metric(),
			"cut: v-neck, group: women", "cut: hockey, group: adult", "sport: softball", "sport: hockey")...),
		"demo":    demoInput,
		"no name": of("Name on back,Number,Size\n,17,M\n,12,M\n,3,M\n"),
		"football": sample("cut: v-neck, group: women", "cut: football-yoke, group: adult", "sport: softball", "sport: football",
			"shape: radial arch, radius: 14in, ", "", "front number: {", "sleeve number: {face: graduate, height: 2in, colour: egret}\n  front number: {"),
		"raglan": sample("cut: v-neck", "cut: raglan", "front number: {", "left chest: {text: Est. Tidewater, height: 3/4in, colour: egret}\n"+
			"  sleeve number: {face: graduate, height: 3in, colour: egret}\n  front number: {"),
		"button": sample("#1d3b53", "#777777", "cut: v-neck, group: women", "cut: full-button, group: youth"),
		"tee":    sample("cut: v-neck", "cut: crew-tee", pieces, backNameLine),
		"soccer": sample("cut: v-neck", "cut: soccer", "sport: softball", "sport: soccer", ", trim: marsh gold", "",
			"marsh gold: \"#e2a336\"", sixColours, "front number: {face: graduate, height: 3in, colour: egret", "front number: {face: quantico, height: 3in, colour: sky",
			"oswald, height", "league-gothic, height",
			"{width: 3/16in, colour: marsh gold}", "{width: 1/8in, colour: black}, {width: 1/16in, colour: red}"),
		"long": sample("Alder Point Herons", "The Honourable Company of Alder Point Tidewater Herons and Friends",
			"height: 1 3/4in, shape: radial arch, radius: 14in", "height: 6in, shape: vertical arch down, rise: 1in"),
		"shorts": sample("cut: v-neck, group: women", "cut: shorts, group: youth", pieces,
			"  shorts number: {face: graduate, height: 3in, colour: egret}\n"),
	}
}

func lookPage(t testing.TB, in Input) *page.Page {
	t.Helper()
	book, err := draw(in, (*document).planLook)
	require.NoError(t, err)
	require.Len(t, book.Pages(), 1)
	return book.Pages()[0]
}

// No two texts lie over each other, none runs out of the margins, and the page
// is the same every time, whatever the order.
func TestLookTextsNeverCollide(t *testing.T) {
	for name, in := range lookInputs() {
		t.Run(name, func(t *testing.T) {
			p := lookPage(t, in(t))
			show(t, strings.ReplaceAll(name, " ", "-"), p)
			requireClearTexts(t, p)
			requireNoLineThroughText(t, p)
		})
	}
}

// placedWords is a line of text with the box of its capitals.
type placedWords struct {
	text string
	box  geom.Rect
}

func textBoxes(p *page.Page) []placedWords {
	var out []placedWords
	var walk func([]page.Op)
	walk = func(ops []page.Op) {
		for _, op := range ops {
			switch o := op.(type) {
			case page.Words:
				high := 0.70 * o.Style.Size * page.MMPerPoint
				wide := p.Book().Width(page.Style{Size: o.Style.Size, Weight: o.Style.Weight, Tracking: o.Style.Tracking}, o.Text)
				out = append(out, placedWords{o.Text, geom.Rect{Min: geom.Point{X: o.X, Y: o.Y - high}, Max: geom.Point{X: o.X + wide, Y: o.Y}}})
			case page.Clip:
				walk(o.Ops)
			}
		}
	}
	walk(p.Ops())
	return out
}

func requireClearTexts(t require.TestingT, p *page.Page) {
	words := textBoxes(p)
	require.NotEmpty(t, words)
	for i, a := range words {
		require.GreaterOrEqual(t, a.box.Min.X, 10.0, "%q runs out at the left", a.text)
		require.LessOrEqual(t, a.box.Max.X, p.Sheet.W-10, "%q runs out at the right", a.text)
		require.LessOrEqual(t, a.box.Max.Y, p.Sheet.H-10, "%q runs out below", a.text)
		for _, b := range words[i+1:] {
			require.False(t, meet(a.box.Grow(-0.05), b.box.Grow(-0.05)), "%q at %v lies over %q at %v", a.text, a.box, b.text, b.box)
		}
	}
}

// edges lists the straight stretches of everything that is drawn as a line on
// the page itself.
func edges(p *page.Page) [][2]geom.Point {
	var out [][2]geom.Point
	for _, op := range p.Ops() {
		o, ok := op.(page.Stroke)
		if !ok || len(o.Line.Dash) > 0 || o.Line.Join == page.RoundJoin { // the datum lies under the tape, a halo under its text
			continue
		}
		var start, at geom.Point
		for _, s := range o.Path {
			switch s.Op {
			case geom.Move:
				start, at = s.P[0], s.P[0]
			case geom.Line:
				out = append(out, [2]geom.Point{at, s.P[0]})
				at = s.P[0]
			case geom.Close:
				out = append(out, [2]geom.Point{at, start})
			}
		}
	}
	return out
}

// isKey reports whether a text is a key letter, whose ring lies over its line.
func isKey(text string) bool { return len(text) == 1 && text >= "a" && text <= "z" }

func requireNoLineThroughText(t require.TestingT, p *page.Page) {
	lines := edges(p)
	require.NotEmpty(t, lines)
	for _, w := range textBoxes(p) {
		for _, e := range lines {
			require.False(t, !isKey(w.text) && crosses(e[0], e[1], w.box.Grow(-0.1)), "a line from %v to %v runs through %q at %v", e[0], e[1], w.text, w.box)
		}
	}
}

func TestLookIsTheSameEveryTime(t *testing.T) {
	var first, second bytes.Buffer
	require.NoError(t, lookPage(t, sampleInput(t)).WriteSVG(&first, page.SVGOptions{}))
	require.NoError(t, lookPage(t, sampleInput(t)).WriteSVG(&second, page.SVGOptions{}))
	assert.Equal(t, first.Bytes(), second.Bytes())
}

// The words of page 1, each with its place, against a file that was looked at.
func TestLookSaysWhatTheGoldenFileSays(t *testing.T) {
	var b strings.Builder
	for _, w := range textBoxes(lookPage(t, inputOf(t, sampleJob, threeOnM))) {
		fmt.Fprintf(&b, "%6.1f %6.1f  %s\n", w.box.Min.X, w.box.Max.Y, w.text)
	}
	const file = "testdata/look-words.txt"
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(file, []byte(b.String()), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err, "run the test with -update once")
	assert.Equal(t, string(want), b.String())
}

// Lengths that the job asks for come out on the page as they were written.
func TestLookPrintsTheLengthsThatWereAsked(t *testing.T) {
	text := pageText(lookPage(t, inputOf(t, sampleJob, threeOnM)))
	assert.Contains(t, text, "1\u00a0¾\u00a0in", "letter height")
	assert.Contains(t, text, "8\u00a0in", "number height")
	assert.Contains(t, text, "3\u00a0¼\u00a0in", "team name")
	assert.Contains(t, text, "³⁄₁₆\u00a0in", "outline")
	assert.Contains(t, text, "11\u00a0in", "room: 0.7 of a shoulder of 400 mm is 280 mm")
	text = pageText(lookPage(t, sampleInput(t, metric()...)))
	assert.Contains(t, text, "4.5\u00a0cm")
	assert.Contains(t, text, "20.0\u00a0cm")
	assert.Contains(t, text, "28.0\u00a0cm", "room")
	assert.Contains(t, text, "0.5\u00a0cm", "outline")
}

func TestLookShowsTheFirstFullNameOnTheCommonestSize(t *testing.T) {
	for _, row := range []struct{ name, roster, want string }{
		{"commonest", "Aa,1,S\nBb,2,M\nCc,3,M\n", "2"},
		{"a tie goes to the larger", "Aa,1,S\nBb,2,M\nCc,3,L\n", "3"},
		{"first whose name is full", "Wolframmington-Abernethy,1,M\nBb,2,M\n", "2"},
		{"else the first", "Wolframmington-Abernethy,1,M\nWolframmington-Abernethe,2,M\n", "1"},
		{"without a size nobody is shown", "Aa,1,\nBb,2,M\n", "2"},
	} {
		t.Run(row.name, func(t *testing.T) {
			d, err := newDocument(inputOf(t, sampleJob, "Name on back,Number,Size\n"+row.roster))
			require.NoError(t, err)
			p, ok := d.shown()
			require.True(t, ok)
			assert.Equal(t, row.want, p.Number)
		})
	}
}

func TestLookSentence(t *testing.T) {
	for _, row := range []struct{ name, roster, want string }{
		{"all", "Halvorsen,17,M\nBb,2,M\n", "Front and back of number 17, Halvorsen, on a women’s M: the size all of you wear."},
		{"most", "Halvorsen,17,M\nBb,2,M\nCc,3,S\n", "Front and back of number 17, Halvorsen, on a women’s M: the size most of you wear."},
		{"more than any other", "Halvorsen,17,M\nBb,2,M\nCc,3,S\nDd,4,L\nEe,5,XL\n", "Front and back of number 17, Halvorsen, on a women’s M: the size that is worn most."},
		{"a tie", "Bb,2,M\nHalvorsen,17,L\n", "Front and back of number 17, Halvorsen, on a women’s L."},
		{"one player", "Halvorsen,17,L\n", "Front and back of number 17, Halvorsen, on a women’s L."},
		{"no name", ",17,L\n", "Front and back of number 17, on a women’s L."},
		{"no number", "Halvorsen,,L\n", "Front and back of Halvorsen, on a women’s L."},
		{"mixed groups", "Halvorsen,17,Adult L\nBb,2,YS\n", "Front and back of number 17, Halvorsen, on an adult L."},
	} {
		t.Run(row.name, func(t *testing.T) {
			p := lookPage(t, inputOf(t, sampleJob, "Name on back,Number,Size\n"+row.roster))
			assert.Contains(t, strings.Join(pageText(p), " "), row.want)
		})
	}
}

func TestLookEmptyStates(t *testing.T) {
	words := func(in Input) string { return strings.Join(pageText(lookPage(t, in)), " ") }
	all := lookInputs()
	assert.Contains(t, words(all["shorts"](t)), "The back stays plain.")
	assert.Contains(t, words(all["tee"](t)), "The front stays plain.")
	assert.Contains(t, words(all["one"](t)), "One size in this order.")
	assert.Contains(t, words(inputOf(t, sampleJob, "Name on back,Number,Size\nAa,1,\n")), "No player has a size yet")
	bare := words(sampleInput(t, "colour: tidewater", `colour: "#1d3b53"`, "  tidewater: \"#1d3b53\"\n", ""))
	assert.Contains(t, bare, "#1D3B53", "a colour without a name is its hex alone")
	assert.NotContains(t, bare, "Tidewater")
}

// A width is never printed as wider than the room that it fits in, and one that
// does not fit never as narrow as the room.
func TestLookNeverHidesANameThatIsTooWide(t *testing.T) {
	fits := pageText(lookPage(t, inputOf(t, edited(t, sampleJob, []string{"height: 1 3/8in", "height: 1/2in"}),
		"Name on back,Number,Size\nWolframmingtonabernethy,1,M\n")))
	assert.Contains(t, fits, "11\u00a0in", "280 mm of room, filled to 0.01 mm")
	assert.NotContains(t, fits, "11\u00a0¹⁄₁₆\u00a0in")
	over := inputOf(t, sampleJob, "Name on back,Number,Size\nWolframmingtonabernethy,1,M\n")
	name, _ := over.Sized.Players[0].Piece(garment.BackName)
	require.Greater(t, name.InkWidth(), name.Room.Width)
	f := &frame{document: &document{in: over, order: over.Sized.Order}}
	v := &lookView{look: &look{frame: f}}
	for _, by := range []float64{0.001, 0.4, 1, 10} {
		n := *name.Name
		n.InkWidth = name.Room.Width + by
		wide := name
		wide.Name = &n
		assert.NotEqual(t, v.length(name.Room.Width), v.printed(wide), "over by %g mm", by)
	}
}
