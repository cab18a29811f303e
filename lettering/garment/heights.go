package garment

import (
	"fmt"
	"strings"
)

// Span is a range of lengths in millimetres; From and To are equal for a single
// figure, both 0 where there is none.
type Span struct{ From, To float64 }

// NumberHeights holds a shop's usual number heights for a sport, in millimetres.
// They are common practice, no source; a rule book goes before them.
type NumberHeights struct {
	Front, Back    Span
	Sleeve, Shorts Span // sleeve or shoulder
	Stroke         Span // width of a digit's bars
	Basis          string
}

// sportRow holds the usual heights of a sport for children and grown-ups.
type sportRow struct {
	sport                string
	youth, adult         [2]Span // front, back
	sleeve, legs, stroke Span
}

func one(v float64) Span { return Span{v, v} }

// sportRows is the shop's table. Common practice, no source.
func sportRows() []sportRow {
	diamond := [2][2]Span{{{75, 100}, one(150)}, {one(100), one(200)}}
	return []sportRow{
		{"basketball", [2]Span{one(100), one(150)}, [2]Span{one(100), one(200)}, Span{}, one(75), Span{20, 25}},
		{"soccer", [2]Span{one(100), one(200)}, [2]Span{one(100), one(250)}, Span{}, one(100), Span{25, 35}},
		{"baseball", diamond[0], diamond[1], Span{50, 75}, Span{}, one(25)},
		{"softball", diamond[0], diamond[1], Span{50, 75}, Span{}, one(25)},
		{"football", [2]Span{{150, 200}, {200, 250}}, [2]Span{one(203), one(254)}, Span{75, 100}, Span{}, one(38)},
		{"volleyball", [2]Span{{100, 150}, {150, 200}}, [2]Span{one(150), one(200)}, Span{}, Span{}, Span{20, 25}},
		{"hockey", [2]Span{{}, {200, 250}}, [2]Span{{}, {250, 300}}, Span{80, 100}, Span{}, Span{35, 45}},
		{"lacrosse", [2]Span{{150, 200}, {200, 254}}, [2]Span{one(203), one(254)}, one(75), Span{}, one(30)},
	}
}

// Sports returns the sports that NumberHeightsFor knows.
func Sports() []string {
	var out []string
	for _, r := range sportRows() {
		out = append(out, r.sport)
	}
	return out
}

// NumberHeightsFor returns the usual number heights of a sport for a group;
// women's garments take the adult figures. The error lists the known sports.
func NumberHeightsFor(sport string, g Group) (NumberHeights, error) {
	name := strings.ToLower(strings.TrimSpace(sport))
	name = strings.TrimPrefix(name, "ice ")
	for _, r := range sportRows() {
		if r.sport != name {
			continue
		}
		h := r.adult
		if g == Youth {
			h = r.youth
		}
		return NumberHeights{h[0], h[1], r.sleeve, r.legs, r.stroke, practice}, nil
	}
	return NumberHeights{}, fmt.Errorf("no usual number heights for sport %q: give the heights, or use one of %s", sport, strings.Join(Sports(), ", "))
}

// NameHeight is the usual letter height of a name, in millimetres, and the floor
// below which it should not go. Common practice, no source.
type NameHeight struct {
	Usual Span
	Floor float64
	Basis string
}

// The floors of a letter height. A rule's own floor goes before them.
const (
	youthFloor = 38.0 // 1 1/2 in
	adultFloor = 50.0 // 2 in
)

// LetterHeightFor returns the usual letter height of a back name.
func LetterHeightFor(sport string, g Group) NameHeight {
	name := strings.TrimPrefix(strings.ToLower(strings.TrimSpace(sport)), "ice ")
	switch {
	case g == Youth:
		return NameHeight{Span{38, 50}, youthFloor, practice}
	case name == "hockey":
		return NameHeight{Span{64, 76}, adultFloor, practice}
	}
	return NameHeight{Span{50, 64}, adultFloor, practice}
}
