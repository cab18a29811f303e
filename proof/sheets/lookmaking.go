package sheets

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"yokeline/lettering/length"
	"yokeline/lettering/order"
)

// makingWords names the method, its layers and the finest details of this
// order, each measured on the finished shapes of all players.
func (d *document) makingWords() string {
	m, ok := order.LookupMethod(d.order.Method)
	if !ok {
		return sentenceCase(d.order.Method) + "."
	}
	words := []string{sentenceCase(m.Name) + d.layerWords(m.ID) + "."}
	stroke, gap := d.finest()
	var measured []string
	if !math.IsInf(stroke, 1) {
		measured = append(measured, "the thinnest stroke of a digit is "+d.fine(stroke))
	}
	if !math.IsInf(gap, 1) {
		measured = append(measured, "the narrowest gap between letters is "+d.fine(gap))
	}
	if len(measured) > 0 {
		words = append(words, sentenceCase(list(measured))+".")
	}
	if stroke < m.MinStroke || gap < m.MinGap {
		words = append(words, "That is finer than is usual for it: ask for a sample.")
	}
	return strings.Join(words, " ")
}

// fine prints a detail, rounded down; one that would round to nothing is under
// the smallest step.
func (d *document) fine(mm float64) string {
	text := d.rounded(mm, length.Down)
	if text == d.length(0) {
		return "under " + d.rounded(mm, length.Up)
	}
	return text
}

// finest returns the thinnest measured stroke of a digit and the narrowest gap
// between letters of the order, mm; infinite where nothing was measured.
// Letters that touch, as a script's do, leave no gap to be cut.
func (d *document) finest() (stroke, gap float64) {
	stroke, gap = math.Inf(1), math.Inf(1)
	for _, p := range d.in.Sized.Players {
		for _, piece := range p.Pieces {
			if n := piece.Number; n != nil && n.StrokeThin > 0 {
				stroke = math.Min(stroke, n.StrokeThin)
			}
			if n := piece.Name; n != nil && n.SmallestGap > 0 {
				gap = math.Min(gap, n.SmallestGap)
			}
		}
	}
	return stroke, gap
}

// layerWords says in how many layers film and cloth are cut, and which lies
// lowest, by the piece with the most; of what is printed, in how many colours.
func (d *document) layerWords(method string) string {
	var most order.Piece
	var inks []string
	for _, p := range d.order.Pieces {
		if len(p.Outlines) > len(most.Outlines) || most.Place == "" {
			most = p
		}
		for _, c := range append([]order.Outline{{Colour: p.Colour}}, p.Outlines...) {
			if !slices.Contains(inks, c.Colour.Hex) {
				inks = append(inks, c.Colour.Hex)
			}
		}
	}
	n := len(most.Outlines) + 1
	switch method {
	case "cut film", "flock film", "sewn twill", "satin twill":
	default:
		return " in " + counted(len(inks), "colour")
	}
	if n == 1 {
		return " in one layer"
	}
	words := " in " + counted(n, "layer") + ": " + colourWord(most.Outlines[n-2].Colour) + " first, "
	for i := n - 3; i >= 0; i-- {
		words += "then " + colourWord(most.Outlines[i].Colour) + ", "
	}
	return words + colourWord(most.Colour) + " on top"
}

// counted says how many of a thing there are: one layer, two layers.
func counted(n int, thing string) string {
	words := []string{"no", "one", "two", "three", "four", "five", "six"}
	if n != 1 {
		thing += "s"
	}
	if n < len(words) {
		return words[n] + " " + thing
	}
	return strconv.Itoa(n) + " " + thing
}

// colourWord names a colour in a sentence.
func colourWord(c order.Colour) string {
	if c.Name == "" {
		return strings.ToUpper(c.Hex)
	}
	return strings.ToLower(c.Name)
}
