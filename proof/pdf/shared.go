package pdf

import (
	"codeberg.org/go-pdf/fpdf"

	"yokeline/lettering/geom"
	"yokeline/proof/page"
)

// shared is a drawing stored once as a form object.
type shared struct {
	form fpdf.Template
	high float64 // in the form's own unit
	at   geom.Point
}

// use places a shared drawing. The library maps a form only by corner and
// size, so our own map goes before, and the corner is chosen to add nothing.
func (s *stream) use(o page.Use) {
	form := s.doc.share(o.Art)
	m := geom.Translate(form.at.X, form.at.Y).Then(o.At)
	s.op("q").exact(m.A, m.B, m.C, m.D, m.E, m.F).op("cm")
	s.flush(form)
	s.op("Q")
}

// flush hands over what is written so far, since the library appends the call
// of the form to the content itself.
func (s *stream) flush(form *shared) {
	s.doc.out.RawWriteStr(string(s.out))
	s.out = s.out[:0]
	corner := fpdf.PointType{X: 0, Y: s.doc.high - form.high}
	_, size := form.form.Size()
	s.doc.out.UseTemplateScaled(form.form, corner, size)
}

// share returns the form of a drawing, made when it is first used. The form's
// content is in mm with its box moved to the origin: the library moves forms
// whose box lies elsewhere. Its sizes are handed over divided by the points of
// a mm, since the map of the page has already turned mm into points.
func (d *document) share(a *page.Art) *shared {
	if f, ok := d.arts[a]; ok {
		return f
	}
	k := d.out.GetConversionRatio()
	box := a.Bounds().Grow(0.1)
	f := &shared{high: box.Height() / k, at: box.Min}
	size := fpdf.SizeType{Wd: box.Width() / k, Ht: f.high}
	f.form = d.out.CreateTemplateCustom(fpdf.PointType{}, size, func(t *fpdf.Tpl) {
		inner := &document{out: &t.Fpdf, faces: d.faces, arts: d.arts, high: f.high}
		s := &stream{doc: inner}
		s.op("q").exact(1, 0, 0, 1, -box.Min.X, -box.Min.Y).op("cm")
		s.limit().steps(a.Ops())
		s.op("Q")
		t.RawWriteStr(string(s.out))
	})
	d.arts[a] = f
	return f
}
