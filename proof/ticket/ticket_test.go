package ticket

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/unicode/norm"

	"yokeline/lettering/order"
	"yokeline/lettering/pressing"
	"yokeline/proof/page"
	"yokeline/proof/parts"
	"yokeline/proof/pdf"
)

// wordsOf lists the lines of text of a page in the order in which they are drawn.
func wordsOf(p *page.Page) []page.Words {
	var out []page.Words
	var walk func([]page.Op)
	walk = func(ops []page.Op) {
		for _, op := range ops {
			switch o := op.(type) {
			case page.Words:
				out = append(out, o)
			case page.Clip:
				walk(o.Ops)
			case page.Use:
				walk(o.Art.Ops())
			}
		}
	}
	walk(p.Ops())
	return out
}

// textOf joins the text of the pages whose titles begin so.
func textOf(b *page.Book, title string) string {
	var out []string
	for _, p := range b.Pages() {
		if strings.HasPrefix(p.Title, title) {
			for _, w := range wordsOf(p) {
				out = append(out, w.Text)
			}
		}
	}
	return strings.ReplaceAll(strings.Join(out, " "), "\u00a0", " ")
}

func bookOf(t testing.TB, in Input) *page.Book {
	t.Helper()
	b, err := Book(in)
	require.NoError(t, err)
	return b
}

// change alters what a press ticket is drawn from. The order is a copy that may
// be changed in what no size depends on.
type change func(in *Input, o *order.Order)

// pressInput is the sample order of three players, changed.
func pressInput(t testing.TB, changes ...change) Input {
	t.Helper()
	in := inputOf(t, sized(t, sampleJob, roster(3)), page.Letter())
	s, o := *in.Sized, *in.Sized.Order
	s.Order = &o
	in.Sized, in.Only = &s, []Kind{PressTicket}
	for _, c := range changes {
		c(&in, &o)
	}
	return in
}

// pressPage returns the press ticket of the sample order, changed, as text.
func pressPage(t testing.TB, changes ...change) string {
	t.Helper()
	return textOf(bookOf(t, pressInput(t, changes...)), "Press ticket")
}

func method(id string) change    { return func(_ *Input, o *order.Order) { o.Method = id } }
func variant(word string) change { return func(in *Input, _ *order.Order) { in.Variant = word } }
func fibre(text string) change   { return func(_ *Input, o *order.Order) { o.Garment.Fibre = text } }
func supply(s Supply) change     { return func(in *Input, _ *order.Order) { in.Supply = s } }
func also(s pressing.Step) change {
	return func(in *Input, _ *order.Order) { in.Also = []pressing.Step{s} }
}
func sold(market, wearer string) change {
	return func(_ *Input, o *order.Order) { o.Market, o.Wearer = market, wearer }
}

// What poppler reads on the pick list is the roster: number, name and size of
// every player in one row, in the order of the roster.
func TestExtractedTextIsTheRoster(t *testing.T) {
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		require.NotEqual(t, "required", os.Getenv("YOKELINE_TOOLS"), "pdftotext is not installed")
		t.Skip("pdftotext is not installed: this check reads the pick list back with it")
	}
	s := sized(t, sampleJob, roster(60))
	for _, sheet := range []page.Sheet{page.Letter(), page.A4()} {
		in := inputOf(t, s, sheet)
		in.Only = []Kind{PickList}
		var out bytes.Buffer
		require.NoError(t, pdf.Write(&out, bookOf(t, in), pdf.Facts{}))
		file := filepath.Join(t.TempDir(), "picks.pdf")
		require.NoError(t, os.WriteFile(file, out.Bytes(), 0o600))
		text, err := exec.Command(tool, "-layout", file, "-").Output()
		require.NoError(t, err)
		rows := regexp.MustCompile(`(?m)^ *(no no\.|\d+) {2,}(\S.*?) {2,}(size\?|(?:Y|W)?(?:M|L|XL))(?:$|\s)`).FindAllStringSubmatch(norm.NFC.String(string(text)), -1)
		require.Len(t, rows, len(s.Players))
		for i, p := range s.Players {
			number, size := p.Number, p.Size.Label()
			if number == "" {
				number = "no no."
			}
			if p.Garment == nil {
				size = "size?"
			}
			assert.Equal(t, []string{number, p.Name, size}, rows[i][1:])
		}
	}
}

// Boxes to tick: one a player, one a garment, one a piece.
func TestEveryPieceHasABox(t *testing.T) {
	in := inputOf(t, sized(t, sampleJob, roster(60)), page.Letter())
	in.Only = []Kind{PickList}
	boxes, garments := 0, 0
	for _, p := range bookOf(t, in).Pages() {
		for _, op := range p.Ops() {
			if s, ok := op.(page.Stroke); ok {
				b := s.Path.Bounds()
				if math.Abs(b.Width()-parts.BoxSize) < 0.5 && math.Abs(b.Height()-parts.BoxSize) < 0.5 {
					boxes++
				}
			}
		}
	}
	for _, blank := range in.Count.Blanks {
		garments += blank.Count
	}
	assert.Equal(t, in.Count.Players+garments+in.Count.Pieces, boxes)
}

func TestEveryPlayerHasOneLabel(t *testing.T) {
	s := sized(t, sampleJob, roster(60))
	in := inputOf(t, s, page.Letter())
	in.Only = []Kind{BagLabels}
	text := textOf(bookOf(t, in), "Bag labels")
	for i, p := range s.Players {
		assert.Equal(t, 1, strings.Count(text, fmt.Sprintf(" %d of %d ", i+1, len(s.Players))))
		assert.Contains(t, text, p.Number)
		assert.Contains(t, text, p.Label())
	}
}

// Facts of the trade, common practice, no source: a screen-printed transfer for
// heat-sensitive polyester at 275 °F (135 °C) for 15 s, pre-press about 5 s, cold
// peel; a full-colour low-temperature transfer under a cover sheet for 15 s, cold
// peel, pre-press about 2 s.
func TestTradeFactsStandOnTheTicket(t *testing.T) {
	text := pressPage(t, method("screen transfer"))
	for _, want := range []string{"135 °C", "275 °F", "15 s", "peel cold", "pre-press, to drive out moisture 5 s", "cold peel, heat-sensitive polyester"} {
		assert.Contains(t, text, want)
	}
	text = pressPage(t, method("screen transfer"), variant("full colour"))
	for _, want := range []string{"15 s", "peel cold", "cover sheet yes", "pre-press, to drive out moisture 2 s"} {
		assert.Contains(t, text, want)
	}
}

func TestCautionsAreOnTheTicketInFull(t *testing.T) {
	text := pressPage(t)
	for _, c := range append(pressing.Cautions(), pressing.Care) {
		assert.Contains(t, text, strings.ReplaceAll(typeset(c), "\u00a0", " "))
	}
}

func TestUnknownFibreIsRefused(t *testing.T) {
	for _, text := range []string{"", "unobtainium"} {
		in := pressInput(t, fibre(text))
		in.Only = nil
		_, err := Book(in)
		require.ErrorIs(t, err, pressing.ErrUnknownFibre)
		assert.ErrorContains(t, err, "press ticket: the fibre is not known")
		assert.ErrorContains(t, err, "such as garment: {cut: v-neck, fibre: polyester}")
		in.Only = []Kind{PickList, Counts, BagLabels}
		assert.NotEmpty(t, bookOf(t, in).Pages(), "what sees no heat is made all the same")
	}
}

func TestEmbroideryAloneNeedsNoFibre(t *testing.T) {
	text := pressPage(t, fibre(""), method("embroidery"))
	assert.Contains(t, text, "Nothing of this order is pressed: it is embroidery.")
	assert.Contains(t, text, typeset(pressing.Standing))
	_, err := Book(pressInput(t, fibre(""), method("embroidery"), also(emblem(t))))
	assert.ErrorIs(t, err, pressing.ErrUnknownFibre, "an emblem is pressed")
}

func TestClothWithoutASettingIsRefused(t *testing.T) {
	_, err := Book(pressInput(t, method("flock film")))
	assert.ErrorContains(t, err, "no press setting for flock film on dyed polyester")
}

func TestColouredPolyesterCountsAsDyed(t *testing.T) {
	assert.Contains(t, pressPage(t), "of dyed polyester")
	pale := pressPage(t, func(_ *Input, o *order.Order) {
		o.Garment.Colour, o.Garment.Trim = order.Colour{Hex: "#ffffff"}, order.Colour{}
	})
	assert.Contains(t, pale, "of polyester")
	text := pressPage(t, variant("standard"), also(hotter(t)))
	assert.Contains(t, text, "dye moves into the lettering")
	assert.Contains(t, text, "Stay at or under 150 °C (302 °F), or use a film with a blocker")
	assert.Contains(t, text, "Dyed polyester: over 150 °C (302 °F) only with a blocker, and never over 165 °C (329 °F)")
	assert.NotContains(t, pressPage(t), "standard, 150", "what the cloth does not stand is not offered")
}

// hotter is a press over what dyed polyester stands without harm.
func hotter(t testing.TB) pressing.Step {
	s := emblem(t)
	s.Celsius, s.Setting.ToC = 155, 155
	return s
}

func TestTheHottestIsPressedFirst(t *testing.T) {
	d, err := newDocument(pressInput(t, also(emblem(t))))
	require.NoError(t, err)
	p, err := d.newPlan()
	require.NoError(t, err)
	require.Len(t, p.steps, 3)
	assert.Equal(t, "badge on the left chest", p.steps[0].Place)
	for i := range p.steps[1:] {
		assert.LessOrEqual(t, p.steps[i+1].Celsius, p.steps[i].Celsius)
	}
	for _, w := range p.warnings {
		assert.NotContains(t, w.Text, "lies on the garment when")
	}
}

func TestAStopIsSaidFirst(t *testing.T) {
	s := emblem(t)
	s.Celsius, s.Setting.ToC = 200, 200
	assert.Contains(t, pressPage(t, also(s)), "Stop. Do not press this order as it stands")
	sleep := pressPage(t, func(in *Input, _ *order.Order) {
		in.Wearer = &pressing.Wearer{Child: true, UnderFour: true, Sleepwear: true}
	})
	assert.Contains(t, sleep, "Stop. Do not press")
	assert.Contains(t, sleep, "sleepwear")
}

func TestPromptsFollowMarketAndWearer(t *testing.T) {
	eu := pressing.EU
	for _, test := range []struct {
		name   string
		change change
		has    []string
		hasNot string
	}{
		{"youth sizes in the US", sold("US", ""), []string{"sold in the US, meant for children too", "total lead at most 100 ppm", "tracking label"}, "phthalates"},
		{"toddlers there", sold("US", "toddler"), []string{"children of 3 and under", "eight phthalates"}, "DEHP"},
		{"adults there", sold("US", "adult"), []string{"there is no reminder here"}, "lead"},
		{"the EU from outside", func(in *Input, _ *order.Order) { in.Market, in.Wearer = &eu, &pressing.Wearer{} }, []string{"DEHP", "meant for adults"}, "100 ppm"},
		{"nowhere said", sold("", ""), []string{"does not say where these garments are sold"}, "DEHP"},
		{"elsewhere", sold("other", ""), []string{"look up your local rules"}, "DEHP"},
	} {
		t.Run(test.name, func(t *testing.T) {
			_, after, found := strings.Cut(pressPage(t, test.change), "What the law may ask")
			require.True(t, found)
			for _, want := range test.has {
				assert.Contains(t, after, want)
			}
			assert.NotContains(t, after, test.hasNot)
		})
	}
}

func TestACircuitIsWarnedOf(t *testing.T) {
	assert.Contains(t, pressPage(t, supply(Supply{1800, 120, 15})), "The press draws 15.0 A")
	assert.NotContains(t, pressPage(t, supply(Supply{1800, 230, 16})), "draws")
}

func TestAShopsOwnFiguresAreNamed(t *testing.T) {
	own, faults := pressing.Read("bench.csv", []byte("method,variant,fibres,from_c,to_c,from_s,to_s,pressure,pre_press,peel,second_press,cover\ncut film,ours,polyester,131,131,7,7,light,3 s,warm,none,no\n"))
	require.Empty(t, faults)
	text := pressPage(t, func(in *Input, _ *order.Order) { in.Shop = own })
	for _, want := range []string{"131 °C", "268 °F", "7 s", "warm", "the shop’s own bench.csv"} {
		assert.Contains(t, text, want)
	}
}

func TestUnsignedIsOnEveryPageAndLabel(t *testing.T) {
	in := inputOf(t, sized(t, sampleJob, roster(15)), page.Letter())
	signed := bookOf(t, in)
	in.Unsigned = true
	b := bookOf(t, in)
	require.Len(t, b.Pages(), len(signed.Pages()))
	for i, p := range b.Pages() {
		count := func(p *page.Page) int {
			n := 0
			for _, w := range wordsOf(p) {
				n += strings.Count(w.Text, unsignedWord)
			}
			return n
		}
		want := 1
		if p.Title == BagLabels.String() {
			want += 15
		}
		assert.Equal(t, want, count(p), p.Title)
		assert.Zero(t, count(signed.Pages()[i]))
	}
}

func TestCountsOnThePageAddUp(t *testing.T) {
	in := inputOf(t, sized(t, sampleJob, roster(15)), page.Letter())
	text := textOf(bookOf(t, in), "Counts")
	places, all := [4]int{}, 0
	for i, row := range in.Count.Sizes {
		places[i%4] += row.Pieces
		all += row.Pieces
	}
	assert.Equal(t, in.Count.Pieces, all)
	assert.Contains(t, text, fmt.Sprintf("All sizes %d %d %d %d %d", places[0], places[1], places[2], places[3], all))
	for _, k := range in.Count.Kits {
		assert.Contains(t, text, fmt.Sprintf("· %d in all", k.Total))
	}
	assert.Contains(t, text, "1 size to ask for")
}

func TestSameInputSameBytes(t *testing.T) {
	write := func() string {
		var out bytes.Buffer
		require.NoError(t, pdf.Write(&out, bookOf(t, inputOf(t, sized(t, sampleJob, roster(15)), page.Letter())), pdf.Facts{}))
		return out.String()
	}
	assert.Equal(t, write(), write())
}
