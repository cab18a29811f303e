package parts_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

func head() parts.Head {
	return parts.Head{
		TeamText: "ALDER POINT HERONS", Subtitle: "Softball · home shirt, women’s V-neck",
		Fields: [3]parts.Field{{Label: "Order", Value: "2611-04"}, {Label: "Revision", Value: "B · 25 Nov 2026"}, {Label: "From", Value: "Kettle Lane Lettering"}},
		Page:   2, Pages: 6, Title: "The roster",
		Sentence: "15 players, every back at one scale. 8 names at full height, 4 eased, 1 reduced, 2 over. Please read every name out loud, letter by letter.",
	}
}

func sheets() []page.Sheet {
	return []page.Sheet{page.Letter().Landscape(), page.Letter(), page.A4().Landscape(), page.A4()}
}

// disjoint fails where two lines of text overlap or one leaves the margins.
func disjoint(t *testing.T, p *page.Page) {
	t.Helper()
	g := parts.NewGrid(p.Sheet)
	all := boxes(p)
	for i, a := range all {
		assert.GreaterOrEqual(t, a.Min.X, g.Left-1.2, "%v", a) // the 0 of a scale is centred on its end
		assert.LessOrEqual(t, a.Max.X, g.Right+1e-6, "%v", a)
		assert.LessOrEqual(t, a.Max.Y, g.Height-parts.FootMargin+1, "%v", a)
		for _, b := range all[:i] {
			apart := a.Min.X >= b.Max.X-1e-6 || b.Min.X >= a.Max.X-1e-6 || a.Min.Y >= b.Max.Y-1e-6 || b.Min.Y >= a.Max.Y-1e-6
			assert.True(t, apart, "%s: %v and %v", p.Sheet.Name, a, b)
		}
	}
}

func TestHeadAndFootFitEverySheet(t *testing.T) {
	long := head()
	long.TeamText = "THE UNITED WOMEN OF UPPER ALDER POINT RECREATION SOFTBALL CLUB HERONS OF THE NORTH"
	long.Subtitle = strings.Repeat("Softball · home shirt, women’s V-neck ", 4)
	long.Fields[0].Value, long.Fields[2].Value = "2611-04-B-LATE-ADDITIONS", "Kettle Lane Lettering and Embroidery of Alder Point"
	long.Title = "Across the sizes, 12 of 12"
	long.Sentence += " One rule is broken, two pieces of advice, one check waits."
	note := "The two thin posts beside a name are the room on that size. Names stand as they will be cut."
	b := newBook(t)
	for _, s := range sheets() {
		for _, h := range []parts.Head{head(), long} {
			for _, f := range []parts.Foot{
				{Fingerprint: code, Note: note},
				{Fingerprint: code, Note: note, Scale: 1.0 / 7, Unit: length.Inch, Thing: "shirt"},
				{Fingerprint: code, Note: note, Scale: 1.0 / 20, Unit: length.Centimetre, Thing: "shirt", Remark: "drawn in line: colours as on page 1"},
			} {
				p := b.Add(s, "")
				g := parts.NewGrid(s)
				parts.PageHead(p.Pen, g, h)
				parts.PageFoot(p.Pen, g, f)
				disjoint(t, p)
				all := strings.Join(texts(p.Ops()), " ")
				assert.Contains(t, all, "2 of 6")
				assert.Contains(t, all, "7c41 e09b 52d6 a38f")
				assert.Contains(t, strings.Join(strings.Fields(all), " "), note)
				assert.Contains(t, all, f.Remark)
			}
		}
	}
}

// wideName is a team's name drawn as one bar of the capital height.
func wideName(width float64) geom.Path { return page.RectPath(3, 0, width, parts.TeamHeight) }

func TestTheTeamsNameGetsSmallerBeforeItChangesItsFace(t *testing.T) {
	for _, c := range []struct {
		name        string
		wide, drawn float64
		plain       bool
	}{
		{"as asked", 79, 79, false},
		{"lower", 100, 100 * 3.2 / 4.3, false},
		{"in the text face", 120, 0, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := newPage(t, page.Letter().Landscape())
			h := head()
			h.Team = wideName(c.wide)
			parts.PageHead(p.Pen, parts.NewGrid(p.Sheet), h)
			assert.Equal(t, c.plain, strings.Contains(strings.Join(texts(p.Ops()), "|"), h.TeamText))
			if c.plain {
				return
			}
			box := p.Ops()[1].(page.Fill).Path.Bounds()
			assert.InDelta(t, 14, box.Min.X, 1e-9)
			assert.InDelta(t, c.drawn, box.Width(), 1e-9)
			assert.InDelta(t, 19.3, box.Max.Y, 1e-9, "on the baseline")
		})
	}
}

func TestPageRulerFillsThePresentPage(t *testing.T) {
	p := newPage(t, page.A4())
	parts.PageRuler(p.Pen, 100, 23.6, 26, 2, 6)
	bar := p.Ops()[len(p.Ops())-1].(page.Fill).Path.Bounds()
	assert.InDelta(t, 100+26.0/6, bar.Min.X, 1e-9)
	assert.InDelta(t, 26.0/6, bar.Width(), 1e-9)
	before := len(p.Ops())
	parts.PageRuler(p.Pen, 100, 23.6, 26, 1, 0)
	assert.Len(t, p.Ops(), before)
}

func TestShrunkAndShortenedFit(t *testing.T) {
	p := newPage(t, page.A4())
	name := "DE LA CRUZ-PRENTISS"
	full := p.Width(parts.GroupTitle().Style, name)
	s, fits := parts.Shrunk(p.Pen, parts.GroupTitle(), 7.6, full*0.9, name)
	require.True(t, fits)
	assert.LessOrEqual(t, p.Width(s.Style, name), full*0.9)
	assert.InDelta(t, 8.1, s.Size, 0.05)
	s, fits = parts.Shrunk(p.Pen, parts.GroupTitle(), 7.6, full*0.5, name)
	assert.False(t, fits)
	assert.InDelta(t, 7.6, s.Size, 1e-9)
	assert.Equal(t, name, parts.Shortened(p.Pen, parts.GroupTitle(), full+1, name))
	assert.True(t, strings.HasSuffix(parts.Shortened(p.Pen, parts.GroupTitle(), full/2, name), "…"))
}

func TestAChipSaysItsColourInEveryWay(t *testing.T) {
	p := newPage(t, page.A4())
	parts.ColourChip(p.Pen, 20, 50, 25, parts.Chip{Key: "a", Name: "Tidewater", Colour: tidewater, Use: "shirt"})
	assert.Equal(t, []string{"a", "Tidewater", "#1D3B53", "shirt"}, texts(p.Ops()))
	p = newPage(t, page.A4())
	parts.ColourChip(p.Pen, 20, 50, 25, parts.Chip{Colour: tidewater})
	assert.Equal(t, []string{"#1D3B53"}, texts(p.Ops()))
}
