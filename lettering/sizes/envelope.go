package sizes

import (
	"math"
	"unicode"

	"yokeline/lettering/fit"
	"yokeline/lettering/outline"
)

// surely is a top at which the number keeps the clearance to any name that could
// be set in the characters that the team wears: under the baseline's curve, with
// the deepest descent of those characters all along it. It costs no fit of a name
// and saves looking at most of them. Infinite where no such envelope is known.
func (k *stack) surely() float64 {
	asked := k.plan.order.Pieces[k.above]
	if k.upper.noRoom || formed(asked) || asked.Tail != nil || mitred(layers(asked)) ||
		asked.Embolden != nil || asked.Stroke != nil || asked.Rise != nil && k.plan.order.Fit.Arc == arcOfName {
		return math.Inf(1)
	}
	box, reach := k.box(k.l, k.i), outline.Reach(layers(asked))
	radius := k.plan.radius(k.above, k.upper.limit)
	depth := k.depth(radius, k.descent(k.above)*k.upper.height, box.half+reach+Clearance)
	return k.baseline() + depth + reach + Clearance + box.over
}

// depth is how far letters with a descent, mm, reach under the middle of the
// baseline within a distance from it.
func (k *stack) depth(radius, descent, within float64) float64 {
	h := k.upper.height
	switch shapeOf(k.plan.order.Pieces[k.above].Shape) {
	case fit.RadialArch: // feet stand on the circle, descents on one that much smaller
		inner := radius - descent
		return radius - math.Sqrt(math.Max(0, inner*inner-within*within))
	case fit.VerticalArch:
		return sagOver(radius, 2*within) + descent
	case fit.RadialArchDown: // the corners of a letter at most 2 h wide
		return math.Hypot(radius+descent, h) - radius
	}
	return descent
}

// descent is the deepest descent under the baseline of the characters that a
// piece is set in for the whole team, as a share of the letter height. Infinite
// where marks are set apart from their letters, for those may hang lower.
func (w *worker) descent(i int) float64 {
	if known, ok := w.descents[i]; ok {
		return known
	}
	deepest := 0.0
	for _, r := range w.plan.characters(i) {
		deepest = math.Max(deepest, w.descentOf(i, r))
	}
	w.descents[i] = deepest
	return deepest
}

// descentOf is the descent of one character.
func (w *worker) descentOf(i int, r rune) float64 {
	if unicode.Is(unicode.M, r) {
		return math.Inf(1)
	}
	const height = 100.0
	request := w.nameRequest(i, "x", 0, height)
	request.Text, request.Raised = string(r), nil
	request.Shape, request.Radius, request.Rise = fit.Straight, 0, 0
	settle(&request, w.plan.order.Pieces[i], w.plan.gap, 1)
	n, err := w.fitter.Name(request)
	if err != nil {
		return 0 // a space, or a character that the face lacks: told when the name is made
	}
	return math.Max(0, -n.Ink().Bounds().Min.Y) / height
}

// characters lists what a piece is set in for the whole team, each once.
func (p *plan) characters(i int) []rune {
	var out []rune
	seen := map[rune]bool{}
	asked := p.order.Pieces[i]
	for _, player := range p.order.Players {
		text, _ := Wording(textOf(asked, player), p.faces[asked.Face], asked.Case, asked.Lang, false)
		for _, r := range text {
			if !seen[r] {
				seen[r] = true
				out = append(out, r)
			}
		}
	}
	return out
}
