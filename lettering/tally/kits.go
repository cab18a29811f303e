package tally

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"yokeline/lettering/fit"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
)

// What a kit holds.
const (
	Digits  = "digits"
	Letters = "letters"
)

// Forms in which characters differ from those of a stock kit: they have to be
// cut. An empty form is as the face has it.
const (
	Narrowed  = "narrowed"
	Bent      = "bent"
	WithTail  = "with its tail"
	Thickened = "thickened"
	// AtWidth comes before the value of the width axis, on faces that have one.
	AtWidth = "width"
)

// Kit is the characters of one face, height and colour.
type Kit struct {
	Kind   string // Digits or Letters
	Face   string
	Height float64 // number height or letter height, mm, to a hundredth
	Form   string  // as the face has it, or one of the forms
	Colour order.Colour
	// Outlines belong to a kit in several colours, from the inside outwards.
	Outlines []order.Outline
	Counts   []Character // in the order of their code points
	Total    int
}

// Character is one character as it is cut, with any marks on it.
type Character struct {
	Text  string
	Count int
}

// kits counts characters, never a space.
func kits(s *sizes.Sized) []Kit {
	found := map[string]*Kit{}
	counts := map[string]map[string]int{}
	eachPiece(s, func(_ int, p *sizes.Piece) {
		k := kitOf(p)
		key := k.key()
		if found[key] == nil {
			found[key], counts[key] = &k, map[string]int{}
		}
		for _, c := range Characters(p.Text()) {
			counts[key][c]++
		}
	})
	out := make([]Kit, 0, len(found))
	for key, k := range found {
		for text, n := range counts[key] {
			k.Counts = append(k.Counts, Character{text, n})
			k.Total += n
		}
		slices.SortFunc(k.Counts, func(a, b Character) int { return cmp.Compare(a.Text, b.Text) })
		out = append(out, *k)
	}
	slices.SortFunc(out, compareKits)
	return out
}

// Characters returns the characters of a text as they are cut: one for each
// letter with the marks that stand on it, and none for white space.
func Characters(text string) []string {
	var out []string
	for _, r := range text {
		switch {
		case unicode.IsSpace(r):
		case unicode.Is(unicode.M, r) && len(out) > 0:
			out[len(out)-1] += string(r)
		default:
			out = append(out, string(r))
		}
	}
	return out
}

func kitOf(p *sizes.Piece) Kit {
	k := Kit{Kind: Letters, Height: math.Round(p.Height()*100) / 100, Colour: p.Asked.Colour, Outlines: p.Asked.Outlines, Form: formOf(p)}
	if p.Name != nil {
		k.Face = p.Name.FaceID
	} else {
		k.Kind, k.Face = Digits, p.Number.FaceID
	}
	return k
}

// formOf says in what a piece's characters differ from the face's own.
func formOf(p *sizes.Piece) string {
	const same = 1e-9
	switch n := p.Name; {
	case n == nil:
		if p.Number.Embolden > 0 {
			return Thickened
		}
		return ""
	case p.Drawn != nil:
		return WithTail
	case !slices.Contains([]string{fit.Straight.String(), fit.RadialArch.String(), fit.RadialArchDown.String()}, n.Form()):
		return Bent
	case n.WidthScale < 1-same:
		return Narrowed
	case !math.IsNaN(n.Wdth):
		return fmt.Sprintf("%s %.0f", AtWidth, n.Wdth)
	}
	return ""
}

// key tells kits apart, outlines to a micrometre.
func (k Kit) key() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s|%s|%.2f|%s|%s %s", k.Kind, k.Face, k.Height, k.Form, k.Colour.Name, k.Colour.Hex)
	for _, o := range k.Outlines {
		fmt.Fprintf(&b, "|%.3f %s %s %v", o.Width.MM(), o.Colour.Name, o.Colour.Hex, o.Join)
	}
	return b.String()
}

func compareKits(a, b Kit) int {
	return cmp.Or(cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Face, b.Face), cmp.Compare(b.Height, a.Height), cmp.Compare(a.key(), b.key()))
}

// ColourWords names the colours of a kit or a piece: white, outlined gold.
func ColourWords(c order.Colour, outlines []order.Outline) string {
	words := ColourName(c)
	for _, o := range outlines {
		words += ", outlined " + ColourName(o.Colour)
	}
	return words
}

// ColourName is a colour's name in the job, or its figure where it has none.
func ColourName(c order.Colour) string { return cmp.Or(c.Name, c.Hex) }
