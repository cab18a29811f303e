package garment

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestEveryCutHasMeasuresInEverySize(t *testing.T) {
	for _, c := range Cuts() {
		for _, s := range AllSizes() {
			m, figures, err := Standard(c.Cut, s)
			require.NoError(t, err)
			assert.NoError(t, m.check(c.Cut))
			for _, f := range figures {
				assert.Equal(t, f.MM, *m.field(f.Measure))
				assert.NotEmpty(t, f.Formula, "%s %s %s", c.Cut, s, f.Measure)
				assert.NotEmpty(t, f.Basis, "%s %s %s", c.Cut, s, f.Measure)
			}
			for _, name := range required(c.Cut) {
				assert.Contains(t, names(figures), name, "%s %s", c.Cut, s)
			}
		}
	}
}

func names(figures []Figure) []string {
	var out []string
	for _, f := range figures {
		out = append(out, f.Measure)
	}
	return out
}

func TestUnknownCutsAndSizesAreNamed(t *testing.T) {
	_, _, err := Standard("poncho", Size{Adult, "M"})
	assert.ErrorContains(t, err, `"poncho"`)
	assert.ErrorContains(t, err, "racerback-tank")
	_, err = New(CrewTee, Size{Youth, "3XL"})
	assert.ErrorContains(t, err, "no youth 3XL")
	_, err = New(CrewTee, Size{"toddler", "M"})
	assert.ErrorContains(t, err, "toddler")
}

// statures are the middles of the 12 cm bands that youth letters are taken to
// span (common practice, no source); chests are the middles of the EN 13402-3
// bands, whose limits were read at second hand.
var (
	statures = []float64{1160, 1280, 1400, 1520, 1640}
	chests   = map[Group][]float64{
		Adult: {820, 900, 980, 1060, 1140, 1235, 1350, 1475},
		Women: {780, 860, 940, 1025, 1130, 1250, 1370},
	}
)

var (
	steps  = regexp.MustCompile(`^([\d.]+) \+ ([\d.]+) k$`)
	grown  = regexp.MustCompile(`^([\d.]+) H(?: ([+-]) ([\d.]+))?$`)
	linear = regexp.MustCompile(`^25\.4 \+ 0\.2008 H \+ ([\d.]+)$`)
	neck   = regexp.MustCompile(`^0\.55 \(114\.5 \+ 0\.1222 H\)(?: \+ ([\d.]+))?$`)
	girth  = regexp.MustCompile(`^\(C \+ (\d+)\)/2, C = (19\.0 \+ 0\.4826 H|middle of the EN 13402-3 band)$`)
)

func number(s string) float64 {
	v, _ := strconv.ParseFloat(s, 64)
	return v
}

// worked evaluates a formula of the table for a size; ok is false for the
// formulas that refer to other measures.
func worked(formula string, s Size) (v float64, ok bool) {
	k := float64(s.letterRank() - Size{s.Group, "M"}.letterRank())
	h := 0.0
	if s.Group == Youth {
		h = statures[s.letterRank()]
	}
	if m := steps.FindStringSubmatch(formula); m != nil {
		return number(m[1]) + number(m[2])*k, true
	}
	if m := grown.FindStringSubmatch(formula); m != nil {
		sign := map[string]float64{"+": 1, "-": -1, "": 0}[m[2]]
		return number(m[1])*h + sign*number(m[3]), true
	}
	if m := linear.FindStringSubmatch(formula); m != nil {
		return 25.4 + 0.2008*h + number(m[1]), true
	}
	if m := neck.FindStringSubmatch(formula); m != nil {
		return 0.55*(114.5+0.1222*h) + number(m[1]), true
	}
	if m := girth.FindStringSubmatch(formula); m != nil {
		c := 19.0 + 0.4826*h
		if s.Group != Youth {
			c = chests[s.Group][s.letterRank()]
		}
		return (c + number(m[1])) / 2, true
	}
	return 0, false
}

func TestFiguresAreWhatTheirFormulasGive(t *testing.T) {
	checked := 0
	for _, c := range Cuts() {
		for _, s := range AllSizes() {
			m, figures, err := Standard(c.Cut, s)
			require.NoError(t, err)
			for _, f := range figures {
				want, ok := worked(f.Formula, s)
				switch f.Formula {
				case "0":
					want, ok = 0, true
				case "neck width + 2 strap width":
					want, ok = m.NeckWidth+2*m.StrapWidth, true
				}
				require.True(t, ok, "%s %s %s: %q", c.Cut, s, f.Measure, f.Formula)
				// Figures are rounded to 0.5 mm, and some of their terms were before.
				assert.InDelta(t, want, f.MM, 0.55, "%s %s %s: %s", c.Cut, s, f.Measure, f.Formula)
				assert.Zero(t, math.Mod(f.MM*2, 1), "%s %s %s is in half millimetres", c.Cut, s, f.Measure)
				checked++
			}
		}
	}
	assert.Equal(t, 1900+20*8, checked)
}

func TestMeasuresNeverFallAsSizesRise(t *testing.T) {
	for _, c := range Cuts() {
		for _, g := range Groups() {
			var before *Measures
			for _, l := range Sizes(g) {
				m, _, err := Standard(c.Cut, Size{g, l})
				require.NoError(t, err)
				assert.NoError(t, growing(before, &m, c.Cut), "%s %s %s", c.Cut, g, l)
				before = &m
			}
		}
	}
}

func TestOneLetterIsAnotherGarmentInEachGroup(t *testing.T) {
	chest := func(g Group) float64 {
		m, _, err := Standard(CrewTee, Size{g, "M"})
		require.NoError(t, err)
		return m.ChestHalf
	}
	assert.Equal(t, []float64{402.5, 500, 530}, []float64{chest(Youth), chest(Women), chest(Adult)})
}

func TestBrokenTablesAreRefused(t *testing.T) {
	row := func(name string) string { // the first row of a measure
		for _, l := range strings.Split(measuresCSV, "\n") {
			if strings.Contains(l, name) {
				return l
			}
		}
		return ""
	}
	for name, change := range map[string][2]string{
		"falls":              {"adult,crew-tee,body length,685,710,735", "adult,crew-tee,body length,685,710,705"},
		"no shoulder":        {"adult,crew-tee,neck width,168", "adult,crew-tee,neck width,380"},
		"is not neck width":  {"adult,basketball-tank,strap width,71", "adult,basketball-tank,strap width,70"},
		"leaves under":       {"adult,crew-tee,armhole depth,229", "adult,crew-tee,armhole depth,600"},
		"is not a measure":   {"adult,crew-tee,body length,685", "adult,crew-tee,body length,"},
		"has no size":        {"420,460,500,542.5,595,655,715,,", "420,460,500,542.5,595,655,715,800,"},
		"neither a group":    {"adult,crew-tee,body length", "adult,crew-teee,body length"},
		"lacks hockey women": {"women,hockey,", "#women,hockey,"},
		"cannot be read":     {"adult,crew-tee,body length,685,", "adult,crew-tee,body length,685,1,"},
		"and not 490":        {"450,490,530,570,610,657.5,715,777.5,\"(C + 80)", "450,491,530,570,610,657.5,715,777.5,\"(C + 80)"},
		"give a length":      {row("adult,hockey,sleeve length"), "#"},
	} {
		broken := strings.ReplaceAll(measuresCSV, change[0], change[1])
		require.NotEqual(t, measuresCSV, broken, "%s: nothing was changed", name)
		_, err := readTable(broken)
		assert.ErrorContains(t, err, name)
	}
	_, err := readTable("")
	assert.ErrorContains(t, err, "no head")
}
