package findings_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v4"

	"yokeline/lettering/findings"
	"yokeline/lettering/length"
	"yokeline/lettering/rulebook"
)

// published is one case of testdata/checks.yaml.
type published struct {
	Book, Season, Category, Role string
	Number                       string
	Numbers                      []string
	Pieces                       []publishedPiece
	What, At                     string
	Expect, Because, How         string
}

type publishedPiece struct {
	Place, Text   string
	Name          bool
	Height, Width string
	Stroke        string
	Borders       []string
	BorderColour  string `yaml:"border colour"`
	Body, Garment string
	Face          string
	BelowCollar   string `yaml:"below collar"`
	DigitWidth    string `yaml:"digit width"`
	DigitGap      string `yaml:"digit gap"`
	NumberGap     string `yaml:"number gap"`
	Tilt          string
	EndsClear     string `yaml:"ends clear"`
	PastNumber    string `yaml:"past the number"` // the same, inside its height
	HalfFoot      string `yaml:"half foot"`
	AboveHalf     string `yaml:"above half"` // the same, above it
	DownOffset    string `yaml:"down"`
	Up            string // the same, above the middle
	Side, Shape   string
}

func mm(t *testing.T, text string) float64 {
	t.Helper()
	l, err := length.Parse(text)
	require.NoError(t, err)
	return l.MM()
}

func (p publishedPiece) measured(t *testing.T) findings.Measured {
	kind := findings.KindNumber
	if p.Name {
		kind = findings.KindName
	}
	m := findings.NewMeasured(p.Place, kind, p.Text)
	m.BodyColour, m.GarmentHex, m.Side, m.Shape = p.Body, p.Garment, p.Side, p.Shape
	m.Face = p.Face
	for _, f := range []struct {
		text string
		to   []*float64
	}{
		{p.Height, []*float64{&m.Height, &m.TallestDigit}},
		{p.Width, []*float64{&m.Width}},
		{p.Stroke, []*float64{&m.StrokeThin, &m.StrokeMain}},
		{p.BelowCollar, []*float64{&m.BelowCollar}},
		{p.DigitWidth, []*float64{&m.NarrowestDigit}},
		{p.DigitGap, []*float64{&m.DigitGap}},
		{p.NumberGap, []*float64{&m.NumberGap}},
		{p.Tilt, []*float64{&m.Tilt}},
		{p.EndsClear, []*float64{&m.EndsClear}},
		{p.HalfFoot, []*float64{&m.HalfFoot}},
		{p.DownOffset, []*float64{&m.DownOffset}},
	} {
		if f.text == "" {
			continue
		}
		for _, to := range f.to {
			*to = mm(t, f.text)
		}
	}
	for to, text := range map[*float64]string{&m.EndsClear: p.PastNumber, &m.HalfFoot: p.AboveHalf, &m.DownOffset: p.Up} {
		if text != "" { // a length in a file has no sign
			*to = -mm(t, text)
		}
	}
	for _, b := range p.Borders {
		m.Borders = append(m.Borders, findings.Border{Width: mm(t, b), Colour: p.BorderColour})
	}
	return m
}

func (p published) subject(t *testing.T) findings.Subject {
	s := findings.Subject{Units: length.Inch}
	for i, n := range p.Numbers {
		s.Players = append(s.Players, findings.Wearer{
			Player: []string{"Adair", "Quill", "Okafor", "Lind", "Marsh", "Novak", "Pell"}[i], Number: n, Role: p.Role,
			Pieces: []findings.Measured{findings.NewMeasured("back number", findings.KindNumber, n)},
		})
	}
	if len(p.Pieces) > 0 {
		w := findings.Wearer{Player: "Halvorsen", Number: p.Number, Role: p.Role}
		for _, piece := range p.Pieces {
			m := piece.measured(t)
			if w.Number == "" && m.Kind == findings.KindNumber {
				w.Number = m.Text
			}
			w.Pieces = append(w.Pieces, m)
		}
		s.Players = append(s.Players, w)
	}
	return s
}

func rules(t *testing.T, id, season, category string) *rulebook.Rules {
	t.Helper()
	book, err := rulebook.Load(id)
	require.NoError(t, err)
	r, err := book.InFor(season, category)
	require.NoError(t, err)
	return r
}

// TestPublishedCasesComeOutAsPublished runs every case of the data file. A
// pass needs a row that says so: a check that was not made is not a pass.
func TestPublishedCasesComeOutAsPublished(t *testing.T) {
	data, err := os.ReadFile("testdata/checks.yaml")
	require.NoError(t, err)
	var cases []published
	require.NoError(t, yaml.Load(data, &cases, yaml.WithKnownFields()))
	require.Greater(t, len(cases), 70)
	for _, p := range cases {
		t.Run(p.Book+" "+p.Season+" "+p.Because, func(t *testing.T) {
			got := map[findings.Severity]int{}
			results := findings.Check(rules(t, p.Book, p.Season, p.Category), p.subject(t))
			for _, r := range results {
				what := r.What
				if what == "legal numbers" || what == "duplicate numbers" {
					what = what[:len(what)-1]
				}
				if what != p.What || p.At != "" && r.Place != p.At {
					continue
				}
				got[r.Severity]++
				assert.NotEmpty(t, r.Source)
				if r.Severity == findings.Violation || r.Severity == findings.Advice {
					assert.Equal(t, p.How, r.How, r)
				}
			}
			switch p.Expect {
			case "pass":
				assert.NotZero(t, got[findings.InOrder], results)
				assert.Zero(t, got[findings.Violation]+got[findings.Advice]+got[findings.Unknown], results)
			case "fail":
				assert.NotZero(t, got[findings.Violation], results)
			case "unknown":
				assert.NotZero(t, got[findings.Unknown], results)
				assert.Zero(t, got[findings.Violation]+got[findings.Advice]+got[findings.InOrder], results)
			case "advice":
				assert.NotZero(t, got[findings.Advice], results)
				assert.Zero(t, got[findings.Violation], results)
			default:
				t.Fatalf("a case expects %q", p.Expect)
			}
		})
	}
}
