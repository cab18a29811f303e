package garment

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
)

var (
	update = flag.Bool("update", false, "write the golden files again")
	every  = flag.Bool("every", false, "check the panels of every size, not of some")
	sheets = flag.String("sheets", "", "write the contact sheets, panels too, into this directory")
)

// tint holds the plain test colours of one cut: cloth, trim, second cloth.
type tint struct{ cloth, trim, second string }

func tintOf(c Cut) tint {
	switch c {
	case CrewTee:
		return tint{"#3f6fa8", "#3f6fa8", ""}
	case VNeck:
		return tint{"#2f7d5b", "#f2f2ee", ""}
	case TwoButton:
		return tint{"#f3f3f0", "#27406b", ""}
	case BasketballTank:
		return tint{"#8a2335", "#f2efe6", "#6c1a29"}
	case RacerbackTank:
		return tint{"#1c9aa0", "#12343b", ""}
	case Raglan:
		return tint{"#f4f3ef", "#23395b", "#23395b"}
	case FootballYoke:
		return tint{"#3b4654", "#20242b", "#e0a526"}
	case Hockey:
		return tint{"#b5202e", "#f1f1f1", ""}
	case Soccer:
		return tint{"#efc93d", "#1d4f91", "#1d4f91"}
	}
	return tint{"#c9ccd0", "#b0b4ba", ""}
}

func (t tint) of(cut Cut, r Role) string {
	switch r {
	case Inside:
		return "#8d8f92"
	case InsideCollar:
		return "#77797c"
	case Collar, Cuff, Binding, Waistband:
		return t.trim
	case Button:
		return "#ffffff"
	case SidePanel, Yoke:
		if t.second != "" {
			return t.second
		}
	case Sleeve:
		if t.second != "" && cut != Soccer && cut != BasketballTank {
			return t.second
		}
	}
	return t.cloth
}

// svgOf draws one view in the style of a test picture, not of a proof.
func svgOf(g *Garment, s Side, panels bool) string {
	var b strings.Builder
	t := tintOf(g.Cut())
	widths := map[Role]float64{Outline: 3.4, Edge: 2.6, Seam: 2, Stitch: 1.3, Detail: 1.1}
	for _, p := range g.View(s) {
		switch d := svgPath(p.Path); {
		case p.Role == Fold:
			fmt.Fprintf(&b, `<path d="%s" fill="#000" fill-opacity="0.042"/>`+"\n", d)
		case p.Role == Stitch:
			fmt.Fprintf(&b, `<path d="%s" fill="none" stroke="#444" stroke-width="%g" stroke-dasharray="5 4"/>`+"\n", d, widths[p.Role])
		case p.Role.Line():
			fmt.Fprintf(&b, `<path d="%s" fill="none" stroke="#222" stroke-width="%g" stroke-linejoin="round"/>`+"\n", d, widths[p.Role])
		default:
			c := t.of(g.Cut(), p.Role)
			fmt.Fprintf(&b, `<path d="%s" fill="%s" stroke="%s" stroke-width="0.4"/>`+"\n", d, c, c)
		}
	}
	if panels {
		for _, p := range g.Panels(s) {
			fmt.Fprintf(&b, `<path d="%s" fill="#0aa3b5" fill-opacity="0.3" stroke="#00606c" stroke-width="2"/>`+"\n", svgPath(p.Region.Path()))
		}
	}
	return b.String()
}

func svgPath(p geom.Path) string {
	var b strings.Builder
	for _, s := range p {
		switch s.Op {
		case geom.Move:
			fmt.Fprintf(&b, "M%.1f %.1f", s.P[0].X, s.P[0].Y)
		case geom.Line:
			fmt.Fprintf(&b, "L%.1f %.1f", s.P[0].X, s.P[0].Y)
		case geom.Quad:
			fmt.Fprintf(&b, "Q%.1f %.1f %.1f %.1f", s.P[0].X, s.P[0].Y, s.P[1].X, s.P[1].Y)
		case geom.Cube:
			fmt.Fprintf(&b, "C%.1f %.1f %.1f %.1f %.1f %.1f", s.P[0].X, s.P[0].Y, s.P[1].X, s.P[1].Y, s.P[2].X, s.P[2].Y)
		case geom.Close:
			b.WriteString("Z")
		}
	}
	return b.String()
}

func sheet(w, h float64, body string) string {
	return fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" width="%gmm" height="%gmm" viewBox="0 0 %g %g">`+"\n"+
		`<rect width="%g" height="%g" fill="#fff"/>`+"\n%s</svg>\n", w/10, h/10, w, h, w, h, body)
}

func at(x, y float64, body string) string {
	return fmt.Sprintf("<g transform=\"translate(%g %g)\">\n%s</g>\n", x, y, body)
}

func must(t *testing.T, c Cut, s Size) *Garment {
	t.Helper()
	g, err := New(c, s)
	require.NoError(t, err)
	return g
}

// golden holds a drawing against the one on file: the same text, and every
// number within 0.15 mm, for the last digit may differ between processors.
func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	number := regexp.MustCompile(`-?\d+(\.\d+)?`)
	require.True(t, number.ReplaceAllString(string(want), "#") == number.ReplaceAllString(got, "#"),
		"%s has other parts than the drawing: look at it, then run with -update", name)
	was := number.FindAllString(string(want), -1)
	for i, n := range number.FindAllString(got, -1) {
		a, _ := strconv.ParseFloat(was[i], 64)
		b, _ := strconv.ParseFloat(n, 64)
		require.InDelta(t, a, b, 0.15, "%s differs from the drawing: look at it, then run with -update", name)
	}
}

func cutsSheet(t *testing.T, panels bool) string {
	const cellW, cellH = 1300, 900
	var b strings.Builder
	for i, c := range Cuts() {
		g := must(t, c.Cut, Size{Adult, "M"})
		for _, s := range []Side{Front, Back} {
			x := (float64(i%2*2+int(s)) + 0.5) * cellW
			b.WriteString(at(x, 70+float64(i/2)*cellH, svgOf(g, s, panels)))
		}
	}
	return sheet(4*cellW, 6*cellH, b.String())
}

// placedSheet draws the usual pieces as blocks as wide as their room.
func placedSheet(t *testing.T) string {
	const cellW, cellH = 1300, 900
	var b strings.Builder
	for i, c := range Cuts() {
		g := must(t, c.Cut, Size{Adult, "M"})
		for s := range Side(2) {
			body := svgOf(g, s, true)
			for p, band := range usualBands(t, g) {
				place, _ := g.Place(p)
				if place.Side != s {
					continue
				}
				w := g.Room(p, band[0], band[0]+band[1]).Width
				if p == BackNumber || p == FrontNumber || p == SleeveNumber || p == ShortsNumber {
					w = math.Min(w, 1.2*band[1])
				}
				var path geom.Path
				path.MoveTo(place.Point(-w/2, band[0]))
				path.LineTo(place.Point(w/2, band[0]))
				path.LineTo(place.Point(w/2, band[0]+band[1]))
				path.LineTo(place.Point(-w/2, band[0]+band[1]))
				path.Close()
				body += fmt.Sprintf(`<path d="%s" fill="#e24a1b" fill-opacity="0.5"/>`+"\n", svgPath(path))
			}
			b.WriteString(at((float64(i%2*2+int(s))+0.5)*cellW, 70+float64(i/2)*cellH, body))
		}
	}
	return sheet(4*cellW, 6*cellH, b.String())
}

func sizesSheet(t *testing.T, c Cut) string {
	var b strings.Builder
	for row, g := range Groups() {
		x := 30.0
		for _, l := range Sizes(g) {
			v := must(t, c, Size{g, l})
			box := v.Bounds(Front)
			b.WriteString(at(x-box.Min.X, 60+float64(row)*1000, svgOf(v, Front, false)))
			x += box.Width() + 60
		}
	}
	return sheet(8500, 3000, b.String())
}

func TestDrawingsOfEveryCutAreUnchanged(t *testing.T) {
	golden(t, "cuts.svg", cutsSheet(t, false))
}

func TestContactSheetsAreWrittenOnRequest(t *testing.T) {
	if *sheets == "" {
		t.Skip("only with -sheets")
	}
	write := func(name, svg string) {
		require.NoError(t, os.WriteFile(filepath.Join(*sheets, name), []byte(svg), 0o644))
	}
	write("cuts.svg", cutsSheet(t, false))
	write("panels.svg", cutsSheet(t, true))
	write("placed.svg", placedSheet(t))
	for _, c := range Cuts() {
		write("sizes-"+string(c.Cut)+".svg", sizesSheet(t, c.Cut))
	}
}
