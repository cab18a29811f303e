package sheets

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// column reads a column of the sign-off table from the top down, over all
// pages.
func column(pages []*page.Page, from, to float64) []string {
	var out []string
	for _, p := range pages {
		g := parts.NewGrid(p.Sheet)
		below := g.Bottom
		for _, w := range textBoxes(p) {
			if w.text == "Still to choose" || strings.HasPrefix(w.text, "Nothing to choose") || strings.HasPrefix(w.text, "No rule book") || strings.Contains(w.text, "without a size: we fit") {
				below = min(below, w.box.Min.Y)
			}
		}
		box := geom.Rect{Min: geom.Point{X: g.Left + from - 0.2, Y: g.Top + headsHigh}, Max: geom.Point{X: g.Left + to, Y: below}}
		out = append(out, inBox(p, box)...)
	}
	return out
}

func TestSignOffListsEverybodyOnceInTheOrderOfTheRoster(t *testing.T) {
	for _, paper := range []Paper{Letter, A4} {
		for _, n := range []int{1, 3, 15, 26, 60, 300} {
			in := blockInput(t, length.Inch, manyRows(n))
			in.Paper = paper
			pages := drawn(t, in, (*document).planSignOff)
			var numbers, sizes []string
			names := ""
			for _, p := range in.Sized.Players {
				number := p.Number
				if number == "" {
					number = "no no."
				}
				numbers = append(numbers, number)
				size := p.Size.Letter
				if p.Garment == nil {
					size = "size not known"
				}
				sizes = append(sizes, size)
				name := strings.ToUpper(p.Name)
				if p.Garment == nil {
					name = p.Name // no piece of the order says how its text is cased
				}
				if name == "" {
					name = "no name"
				}
				names += name
			}
			letters := func(s string) string { return strings.ToUpper(strings.ReplaceAll(s, " ", "")) }
			assert.Equal(t, numbers, column(pages, 0, signName-1))
			assert.Equal(t, sizes, column(pages, signSize, signFit-1))
			assert.Equal(t, letters(names), letters(strings.Join(column(pages, signName, signSize-1), "")))
			for i, p := range pages {
				requireTidy(t, p)
				show(t, fmt.Sprintf("signoff-%d-%d-%d", paper, n, i), p)
				last := i == len(pages)-1
				assert.Equal(t, last, strings.Contains(strings.Join(pageText(p), " "), "Name in capitals"), "only the last page is signed")
			}
		}
	}
}

// With the smallest rows Letter holds 26 players and four questions, A4 29
// (style guide, section 7).
func TestSignOffHoldsATeamOnOnePage(t *testing.T) {
	for paper, n := range map[Paper]int{Letter: 26, A4: 29} {
		rows := make([]row, n)
		for i := range rows {
			rows[i] = row{"Quill", fmt.Sprint(i), "M", fit.Full}
			if i < 4 {
				rows[i].verdict = fit.Reduced
			}
		}
		in := blockInput(t, length.Inch, rows)
		in.Paper, in.Sized.Rules = paper, inventedRules()
		in.Results = nil
		d, err := newDocument(in)
		require.NoError(t, err)
		d.pages = []leaf{{section: lookSection}, {section: decideSection}} // the choices are drawn
		leaves, err := d.planSignOff()
		require.NoError(t, err)
		assert.Len(t, leaves, 1, "%d players", n)
	}
}

func TestSignOffAsksForEveryChoice(t *testing.T) {
	in := checkedInput(t, edited(t, sampleJob, []string{"units: in", "rules: nfhs-softball\nunits: in"}), sampleRoster)
	d, err := newDocument(in)
	require.NoError(t, err)
	var got []string
	for _, q := range d.questions() {
		line := q.number + " " + q.who + ":"
		for _, w := range q.ways {
			line += " " + w.letter + " " + w.title + ";"
		}
		got = append(got, line)
	}
	assert.Equal(t, []string{
		"14 FEATHERSTONEHAUGH: A lower letters; B narrower letters; C narrower face; D more room;",
		"8 DE LA CRUZ-PRENTISS: A lower letters; B narrower letters; C narrower face; D more room; E two lines; F an initial;",
		"11 WOJCIECHOWSKA: A as it stands; B narrower letters; C flatter arch; D narrower face; E more room; F next size;",
		"00, 0 NG and ABARA: A 00 becomes; B 0 becomes; C leave both; I know rule 3-2-2 is broken;",
	}, got)
	requireInOrder(t, allText(t, in, (*document).planSignOff), []string{"Still to choose", "FEATHERSTONEHAUGH", "A", "B", "C", "DE LA CRUZ-PRENTISS", "E", "WOJCIECHOWSKA", "00, 0"})
}

// Every way out that sizing found is offered, and none else.
func TestSignOffOffersTheWaysThatFit(t *testing.T) {
	in := checkedInput(t, sampleJob, sampleRoster)
	d, err := newDocument(in)
	require.NoError(t, err)
	asked := map[int]bool{}
	for _, q := range d.questions() {
		name := q.piece.Name
		asked[q.player] = true
		offered := q.ways
		if name.Verdict == fit.Reduced {
			assert.Equal(t, "as it stands", offered[0].title)
			offered = offered[1:]
		}
		require.Len(t, offered, len(name.WouldFit))
		for i, w := range name.WouldFit {
			assert.Equal(t, w, *offered[i].out)
			assert.Equal(t, w.Kind, offered[i].title)
		}
	}
	for i, p := range in.Sized.Players {
		name, _ := p.Piece(garment.BackName)
		assert.Equal(t, name.Name.Verdict >= fit.Reduced, asked[i], "%s", p.Name)
	}
}

func TestSignOffEmptyStates(t *testing.T) {
	fits := blockInput(t, length.Inch, []row{{"Quill", "7", "M", fit.Full}})
	text := said(t, fits, (*document).planLook, (*document).planSignOff)
	assert.Contains(t, text, "Nothing to choose: every name fits as asked.")
	assert.Contains(t, text, "No rule book was named, so nothing was checked against one.")
	assert.Contains(t, text, "I have looked at the player and at page 1 of this proof. Make it as ticked above.")
	assert.NotContains(t, text, "Still to choose")

	fits.Sized.Rules = inventedRules()
	assert.NotContains(t, said(t, fits, (*document).planSignOff), "No rule book was named")

	unsized := said(t, blockInput(t, length.Inch, []row{{"Quill", "7", "", 0}}), (*document).planSignOff)
	assert.Contains(t, unsized, "size not known")
	assert.NotContains(t, unsized, "every name fits")
	assert.Empty(t, drawn(t, blockInput(t, length.Inch, nil), (*document).planSignOff))
}

func TestSignOffStatement(t *testing.T) {
	in := checkedInput(t, sampleJob, sampleRoster)
	text := said(t, in, (*document).planLook, (*document).planRoster, (*document).planRules, (*document).planSignOff)
	assert.Contains(t, text, "I have looked at all 15 players and at pages 1 to 3 of this proof. Make it as ticked and chosen above.")
}

// A rule that is broken is asked about, with its number.
func TestSignOffAsksAboutTheRulesThatAreBroken(t *testing.T) {
	in := ruledInput(t, finding(findings.Violation, "back number", "number height", "5 in", "at least 6 in", "4-2a", "read"),
		finding(findings.Violation, "front number", "number height", "2 in", "at least 4 in", "4-2a", "read"),
		finding(findings.Advice, "", "colour", "soft", "strong", "4-9", "read"))
	text := said(t, in, (*document).planSignOff)
	assert.Contains(t, text, "Back number height A   put it right, with a new proof B   leave it; I know rule 4-2a is broken")
	assert.Contains(t, text, "Front number height A   put it right")
	assert.NotContains(t, text, "4-9")
	assert.NotContains(t, said(t, ruledInput(t), (*document).planSignOff), "is broken")
}

func TestSignOffTerms(t *testing.T) {
	in := checkedInput(t, sampleJob, sampleRoster)
	text := said(t, in, (*document).planSignOff)
	for _, want := range []string{"What you sign for", "What we then make", "How close it will be", "After you sign", "Pressed by hand: up to ¼\u00a0in"} {
		assert.Contains(t, text, want)
	}
	metricText := said(t, sampleInput(t, metric()...), (*document).planSignOff)
	assert.Contains(t, metricText, "up to 0.6\u00a0cm")
	in.Sized.Order.Terms = "Ours alone: what is signed is made."
	text = said(t, in, (*document).planSignOff)
	assert.Contains(t, text, "Ours alone: what is signed is made.")
	assert.NotContains(t, text, "What we then make", "the shop's own terms stand in place of the usual ones")
	in.Sized.Order.Method = "sewn twill"
	in.Sized.Order.Terms = ""
	assert.NotContains(t, said(t, in, (*document).planSignOff), "Pressed")
}

// Terms of any length stand above the statement, over as many pages as needed.
func TestSignOffHoldsLongTerms(t *testing.T) {
	in := blockInput(t, length.Inch, manyRows(20))
	for i := range 150 {
		in.Sized.Order.Terms += fmt.Sprintf("Sentence %d: what is signed is what is made, and nothing else. ", i)
	}
	pages := drawn(t, in, (*document).planSignOff)
	assert.Greater(t, len(pages), 1)
	text := ""
	for _, p := range pages {
		requireTidy(t, p)
		text += strings.Join(pageText(p), " ") + " "
	}
	for i := range 150 {
		require.Contains(t, text, fmt.Sprintf("Sentence %d:", i))
	}
	assert.Less(t, strings.Index(text, "Sentence 149:"), strings.Index(text, "I have looked at"))
}

// Three boxes a player and one for each way out.
func TestSignOffHasABoxForEveryAnswer(t *testing.T) {
	in := checkedInput(t, sampleJob, sampleRoster)
	d, err := newDocument(in)
	require.NoError(t, err)
	want := 3 * len(in.Sized.Players)
	for _, q := range d.questions() {
		want += len(q.ways)
	}
	got := 0
	for _, p := range drawn(t, in, (*document).planSignOff) {
		for _, op := range p.Ops() {
			s, ok := op.(page.Stroke)
			b := s.Path.Bounds()
			got += count(ok && geomNear(b.Width(), parts.BoxSize) && geomNear(b.Height(), parts.BoxSize))
		}
	}
	assert.Equal(t, want, got)
}

func geomNear(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }

func TestSignOffSaysWhatTheGoldenFileSays(t *testing.T) {
	in := checkedInput(t, edited(t, sampleJob, []string{"units: in", "rules: nfhs-softball\nunits: in"}), head+"Ng,00,S\nAbara,0,M\nFeatherstonehaugh,14,S\n,5,M\n")
	golden(t, "signoff", drawn(t, in, (*document).planLook, (*document).planSignOff)[1:])
}
