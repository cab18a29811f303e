package signpage

import (
	"fmt"
	"html/template"
	"math"
	"strings"

	"yokeline/lettering/choices"
	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
	"yokeline/proof/sheets"
	"yokeline/proof/shirt"
)

// scale is mm of drawing for a mm of garment, for every player and way out, so
// that the garment of a size is stored once.
const scale = 1.0 / 14

// artist draws what the page shows, in the book of the screen.
type artist struct {
	in       Input
	screen   *sheets.Screen
	drawings *page.Drawings
	symbols  []string
}

func newArtist(in Input, screen *sheets.Screen) *artist {
	a := &artist{in: in, screen: screen, drawings: screen.Book.NewDrawings("d-")}
	for v := parts.Full; v <= parts.Over; v++ {
		a.symbol(verdictID(v), geom.Rect{Max: geom.Point{X: 1.8 * parts.VerdictHeight, Y: parts.VerdictHeight}}, func(p *page.Pen) {
			parts.VerdictMark(p, 0, 0, parts.VerdictHeight, v, v.Colour())
		})
	}
	for r := parts.Broken; r <= parts.InOrder; r++ {
		box := geom.Rect{}.Grow(parts.ResultRadius + 0.2)
		a.symbol(resultID(r), box, func(p *page.Pen) { parts.ResultMark(p, 0, 0, parts.ResultRadius, r, r.Colour()) })
	}
	return a
}

// verdictID and resultID name the symbols of marks.
func verdictID(v parts.Verdict) string { return v.String() }
func resultID(r parts.Result) string   { return strings.ReplaceAll(r.String(), " ", "-") }

// sheet returns an empty page to draw on; its coordinates may be negative.
func (a *artist) sheet() *page.Page { return a.screen.Book.Add(page.Sheet{}, "") }

// symbol stores a drawing that others use by its id.
func (a *artist) symbol(id string, view geom.Rect, draw func(*page.Pen)) {
	p := a.sheet()
	draw(p.Pen)
	a.symbols = append(a.symbols, a.drawings.Symbol(p, view, id))
}

// store is everything that other drawings use.
func (a *artist) store() template.HTML {
	return template.HTML("<defs>" + a.drawings.Defs() + "</defs>" + strings.Join(a.symbols, ""))
}

// picture writes a drawing that stands on its own; alt says what it shows,
// empty for one that its neighbourhood describes.
func (a *artist) picture(p *page.Page, view geom.Rect, class, alt, more string) template.HTML {
	attributes := `class="` + class + `" ` + more
	if alt == "" {
		attributes += ` aria-hidden="true" focusable="false"`
	} else {
		attributes += ` role="img" aria-label="` + template.HTMLEscapeString(alt) + `"`
	}
	return template.HTML(a.drawings.SVG(p, view, attributes))
}

// team draws the team's name in the order's own face; empty where that lacks a
// letter.
func (a *artist) team() template.HTML {
	box := a.screen.Team.Bounds()
	if box.Empty() {
		return ""
	}
	p := a.sheet()
	p.FillPath(a.screen.Team, geom.Affine{A: 1, D: -1}, parts.Ink)
	view := geom.Rect{Min: geom.Point{X: box.Min.X, Y: -parts.TeamHeight}, Max: geom.Point{X: box.Max.X}}
	return a.picture(p, view, "team", a.in.Sized.Order.Team, "")
}

// comb draws the fingerprint.
func (a *artist) comb() template.HTML {
	p := a.sheet()
	parts.Comb(p.Pen, 0, 0, a.in.Fingerprint[:16])
	return a.picture(p, page.Bounds(p.Ops()), "comb", "", "")
}

// view is one side of a player's garment about the page's origin.
func (a *artist) view(p sizes.Player, side garment.Side, posts shirt.Posts) shirt.View {
	return shirt.View{Garment: p.Garment, Side: side, Pieces: p.Pieces, Cloth: a.screen.Cloth, Scale: scale, Posts: posts}
}

// onPage maps a box of the garment to the drawing.
func onPage(r geom.Rect) geom.Rect {
	return geom.Rect{
		Min: geom.Point{X: r.Min.X * scale, Y: r.Min.Y * scale},
		Max: geom.Point{X: r.Max.X * scale, Y: r.Max.Y * scale},
	}
}

// box writes a rectangle as a view box.
func box(r geom.Rect) string {
	return fmt.Sprintf("%.1f %.1f %.1f %.1f", r.Min.X, r.Min.Y, r.Width(), r.Height())
}

// player draws the side that players are told apart by in the window of the
// roster, and the whole other side where that carries something.
func (a *artist) player(p sizes.Player) (picture, other template.HTML, err error) {
	posts := shirt.ThinPosts
	for _, piece := range p.Pieces {
		if piece.Name != nil && piece.Name.Verdict == fit.Over {
			posts = shirt.OverPosts
		}
	}
	sheet, v := a.sheet(), a.view(p, a.screen.Side, posts)
	if err := v.Paint(sheet.Pen); err != nil {
		return "", "", err
	}
	closer := box(onPage(a.lettering(p.Pieces, a.screen.Side, p.Garment)))
	whole := box(v.Bounds().Grow(1))
	picture = a.picture(sheet, onPage(a.screen.Window), "shirt", "", `data-closer="`+closer+`" data-whole="`+whole+`"`)
	side := garment.Front
	if a.screen.Side == garment.Front {
		side = garment.Back
	}
	for _, piece := range p.Pieces {
		if piece.Side != side {
			continue
		}
		sheet, v := a.sheet(), a.view(p, side, shirt.NoPosts)
		if err := v.Paint(sheet.Pen); err != nil {
			return "", "", err
		}
		return picture, a.picture(sheet, v.Bounds().Grow(1), "other", "", "hidden"), nil
	}
	return picture, "", nil
}

// lettering is the box of all pieces on a side with some cloth around them, mm of
// garment.
func (a *artist) lettering(pieces []sizes.Piece, side garment.Side, g *garment.Garment) geom.Rect {
	const around = 22.0
	all := geom.EmptyRect()
	for _, p := range pieces {
		if p.Side != side || p.Turn != 0 {
			continue
		}
		half := math.Max(p.InkWidth(), p.Room.Width*0.98) / 2
		ink := p.Ink().Bounds()
		all = all.Include(geom.Point{X: p.At.X - half, Y: p.At.Y - ink.Max.Y}).Include(geom.Point{X: p.At.X + half, Y: p.At.Y - ink.Min.Y})
	}
	if all.Empty() {
		return g.Bounds(side)
	}
	return all.Grow(around)
}

// wayView is the part of the garment that the answers to a question show: the
// piece as each makes it, with its room, and what stands around it.
func (a *artist) wayView(q choices.Question, answers []sizes.Player) geom.Rect {
	const wider, aspect, under = 1.3, 0.7, 26.0
	wide, low := 0.0, 0.0
	for _, p := range answers {
		piece, ok := p.Piece(q.Piece.Asked.Place)
		if !ok {
			continue
		}
		wide = math.Max(wide, math.Max(piece.InkWidth(), piece.Room.Width))
		low = math.Max(low, piece.At.Y-piece.Ink().Bounds().Min.Y)
	}
	wide *= wider
	top := a.screen.Window.Min.Y
	if q.Piece.Side != a.screen.Side {
		top = math.Min(top, q.Piece.Top-3*under)
	}
	top += math.Max(0, low+under-(top+wide*aspect))
	x := q.Piece.At.X
	return onPage(geom.Rect{Min: geom.Point{X: x - wide/2, Y: top}, Max: geom.Point{X: x + wide/2, Y: top + wide*aspect}})
}

// answer returns the player of a question with one of its ways in place; false
// for a way that is not drawn.
func (a *artist) answer(q choices.Question, w choices.Way) (sizes.Player, bool) {
	p := a.in.Sized.Players[q.Player]
	switch {
	case p.Garment == nil:
		return p, false
	case w.Name != nil || w.Number != nil:
		return a.screen.Chosen(q.Player, q.Piece.Asked.Place, w.Name, w.Number)
	}
	return p, w.Kind == choices.AsItStands
}

// way draws a player as a way out makes it.
func (a *artist) way(q choices.Question, p sizes.Player, view geom.Rect) (template.HTML, error) {
	sheet, v := a.sheet(), a.view(p, q.Piece.Side, shirt.ThinPosts)
	if err := v.Paint(sheet.Pen); err != nil {
		return "", fmt.Errorf("a way out for %s: %w", p.Label(), err)
	}
	closer := box(onPage(a.lettering(p.Pieces, q.Piece.Side, p.Garment)))
	return a.picture(sheet, view, "shirt", "", `data-closer="`+closer+`"`), nil
}
