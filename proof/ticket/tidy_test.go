package ticket

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/pressing"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// inkBox is about the ink of a line of text: from the x height down to short
// descenders.
func inkBox(b *page.Book, w page.Words) geom.Rect {
	size := w.Style.Size * page.MMPerPoint
	wide := b.Width(w.Style, w.Text)
	return geom.Rect{Min: geom.Point{X: w.X, Y: w.Y - 0.55*size}, Max: geom.Point{X: w.X + wide, Y: w.Y + 0.1*size}}
}

// requireTidy says whether texts lie over each other or outside the margins.
func requireTidy(t require.TestingT, b *page.Book, p *page.Page) {
	g := parts.NewGrid(p.Sheet)
	words := wordsOf(p)
	boxes := make([]geom.Rect, len(words))
	for i, w := range words {
		boxes[i] = inkBox(b, w)
		if boxes[i].Min.X < g.Left-0.1 || boxes[i].Max.X > g.Right+0.1 || boxes[i].Max.Y > p.Sheet.H-parts.FootMargin {
			require.Failf(t, "beyond the margins", "%s: %q at %v", p.Title, w.Text, boxes[i])
		}
		for k, o := range boxes[:i] {
			if boxes[i].Min.X < o.Max.X-0.05 && o.Min.X < boxes[i].Max.X-0.05 && boxes[i].Min.Y < o.Max.Y && o.Min.Y < boxes[i].Max.Y {
				require.Failf(t, "texts meet", "%s: %q at %v lies over %q at %v", p.Title, w.Text, boxes[i], words[k].Text, o)
			}
		}
	}
}

// Every page is tidy, and every press ticket says its standing line.
func TestPagesAreTidy(t *testing.T) {
	orders := []*sizes.Sized{sized(t, sampleJob, roster(3)), sized(t, sampleJob, roster(15)), sized(t, sampleJob, roster(60))}
	for _, job := range otherJobs() {
		orders = append(orders, sized(t, job, roster(7)))
	}
	for i, s := range orders {
		in := inputOf(t, s, []page.Sheet{page.A4(), page.Letter()}[i%2])
		in.Unsigned, in.Supply = i < 2, Supply{1800, 120, 15}
		b := bookOf(t, in)
		for _, p := range b.Pages() {
			requireTidy(t, b, p)
			if strings.HasPrefix(p.Title, PressTicket.String()) {
				assert.True(t, slices.ContainsFunc(wordsOf(p), func(w page.Words) bool { return w.Text == typeset(pressing.Standing) }), p.Title)
			}
		}
	}
}

func TestLongListsRepeatTheirHeads(t *testing.T) {
	in := inputOf(t, sized(t, sampleJob, roster(60)), page.Letter())
	in.Only = []Kind{PickList}
	b := bookOf(t, in)
	require.Greater(t, len(b.Pages()), 2)
	for i, p := range b.Pages() {
		text := ""
		for _, w := range wordsOf(p) {
			text += w.Text + "\n"
		}
		assert.Contains(t, text, "back number", "page %d", i+1)
		assert.Equal(t, fmt.Sprintf("Pick list, %d of %d", i+1, len(b.Pages())), p.Title)
	}
}

// Nothing is lost or split, whatever the heights; a page never holds more than
// its room unless a strip alone is higher.
func TestStripsFlow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		head := &strip{high: 5}
		var strips []strip
		for range rapid.IntRange(1, 40).Draw(t, "strips") {
			strips = append(strips, strip{high: rapid.Float64Range(1, 60).Draw(t, "high"), keep: rapid.Bool().Draw(t, "keep"), head: head})
		}
		left := len(strips)
		for _, p := range flow(strips, 100) {
			sum := 0.0
			for i, s := range p {
				sum += s.high
				if s.head != nil {
					left--
				} else if i != 0 {
					t.Fatal("a head in the middle of a page")
				}
			}
			if sum > 100+rounding {
				t.Fatalf("%g mm on a page", sum)
			}
		}
		if left != 0 {
			t.Fatalf("%d strips lost", left)
		}
	})
}

func TestWordsOfALadderStandApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := ladder{levels: []float64{10}}
		for range rapid.IntRange(1, 8).Draw(t, "steps") {
			l.add(l.levels[len(l.levels)-1]+rapid.Float64Range(0.1, 30).Draw(t, "step"), "1 in", "gap")
		}
		at := l.places(12)
		for i, y := range at {
			if y < 12 || i > 0 && y-at[i-1] < ladderApart-rounding {
				t.Fatalf("words at %v", at)
			}
		}
	})
}

// BenchmarkBook draws all pages of a team of sixty.
func BenchmarkBook(b *testing.B) {
	in, pages := inputOf(b, sized(b, sampleJob, roster(60)), page.Letter()), 0
	for b.Loop() {
		pages += len(bookOf(b, in).Pages())
	}
	b.ReportMetric(float64(pages)/b.Elapsed().Seconds(), "pages/s")
}

// Names as long as a roster takes, numbers of three digits, all sizes there are,
// more pieces than a line holds, and shorts.
func TestPagesOfUnusualOrdersAreTidy(t *testing.T) {
	var all strings.Builder
	all.WriteString("Name on back,Player,Number,Size\n")
	for i, size := range garment.AllSizes() {
		fmt.Fprintf(&all, "%s,Wilhelmina-Bartholomea Quillfeatherstoneham,%d,%s\n", []string{"Vandermeulenbroek-Asquith of Quillhamptn", "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW", "Ng"}[i%3], 100+i, size)
	}
	shorts := strings.NewReplacer("v-neck", "shorts").Replace(sampleJob)
	shorts, _, _ = strings.Cut(shorts, "pieces:")
	shorts += "pieces:\n  shorts number: {face: graduate, height: 3in, colour: egret}\n"
	for _, s := range []*sizes.Sized{
		sized(t, otherJobs()[1], all.String()), sized(t, shorts, roster(7)), sized(t, shorts, "Name,Number,Size\nNg,,\n"),
	} {
		in := inputOf(t, s, page.Letter())
		in.Unsigned = true
		b := bookOf(t, in)
		for _, p := range b.Pages() {
			requireTidy(t, b, p)
		}
	}
}
