package page

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"io"
	"math"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/renderers/rasterizer"

	"yokeline/lettering/geom"
)

// mmPerInch is exact by definition (international inch, 1959).
const mmPerInch = 25.4

// maxPixels bounds a picture at 100 million pixels, 400 MB: A3 at 600 dpi fits.
const maxPixels = 100e6

// WritePNG writes the page as a picture at dpi dots per inch and marks the
// file with that resolution, so that it prints at true size.
func (p *Page) WritePNG(w io.Writer, dpi float64) error {
	img, err := p.Image(dpi)
	if err != nil {
		return err
	}
	return EncodePNG(w, img, dpi)
}

// EncodePNG writes a picture and marks the file with its resolution in dots per
// inch, so that it prints at true size.
func EncodePNG(w io.Writer, img image.Image, dpi float64) error {
	encoder := png.Encoder{CompressionLevel: png.DefaultCompression}
	return encoder.Encode(&resolutionWriter{w: w, perMetre: uint32(math.Round(dpi / mmPerInch * 1000))}, img)
}

// Image draws the page on white at dpi dots per inch. It refuses a resolution
// that gives no pixel or more than 100 million.
func (p *Page) Image(dpi float64) (*image.RGBA, error) {
	k := dpi / mmPerInch
	wide, high := math.Round(p.Sheet.W*k), math.Round(p.Sheet.H*k)
	if !(wide >= 1 && high >= 1 && wide*high <= maxPixels) {
		return nil, fmt.Errorf("a picture of %s at %g dpi would be %.0f × %.0f pixels: choose another resolution", p.Sheet.Name, dpi, wide, high)
	}
	l := newLayer(p.book, image.Rect(0, 0, int(wide), int(high)), image.White)
	l.steps(p.ops, geom.Scale(k, k))
	return l.img, nil
}

// layer is a picture under work; box is its place on the sheet in pixels.
// Lengths reach the rasteriser in pixels, so its resolution is always 1.
type layer struct {
	book *Book
	box  image.Rectangle
	img  *image.RGBA
	ras  *rasterizer.Rasterizer
}

func newLayer(b *Book, box image.Rectangle, ground image.Image) *layer {
	l := &layer{book: b, box: box, img: image.NewRGBA(image.Rect(0, 0, box.Dx(), box.Dy()))}
	if ground != nil {
		draw.Draw(l.img, l.img.Bounds(), ground, image.Point{}, draw.Src)
	}
	// Blending the stored values is what PDF and SVG viewers do.
	l.ras = rasterizer.FromImage(l.img, canvas.DPMM(1), canvas.LinearColorSpace{})
	return l
}

func (l *layer) steps(ops []Op, m geom.Affine) {
	for _, op := range ops {
		switch o := op.(type) {
		case Fill:
			l.fill(o.Path, m, o.Colour.NRGBA())
		case Stroke:
			l.stroke(o, m)
		case Clip:
			l.clip(o, m)
		case Use:
			l.steps(o.Art.Ops(), o.At.Then(m))
		case Words:
			l.words(o, m)
		}
	}
}

func (l *layer) fill(p geom.Path, m geom.Affine, c color.NRGBA) {
	if !l.touches(rectPath(p.Bounds()).Transform(m).Bounds()) {
		return
	}
	style := canvas.DefaultStyle
	style.Fill = canvas.Paint{Color: color.RGBA(c)}
	l.ras.RenderPath(toCanvas(p), style, l.matrix(m))
}

func (l *layer) touches(r geom.Rect) bool {
	return !r.Empty() && r.Max.X > float64(l.box.Min.X) && r.Min.X < float64(l.box.Max.X) &&
		r.Max.Y > float64(l.box.Min.Y) && r.Min.Y < float64(l.box.Max.Y)
}

// matrix maps to the layer's own pixels; canvas has y up from the lower edge.
func (l *layer) matrix(m geom.Affine) canvas.Matrix {
	m = m.Then(geom.Translate(-float64(l.box.Min.X), -float64(l.box.Min.Y))).Then(geom.Affine{A: 1, D: -1, F: float64(l.box.Dy())})
	return canvas.Matrix{{m.A, m.C, m.E}, {m.B, m.D, m.F}}
}

func toCanvas(p geom.Path) *canvas.Path {
	q := &canvas.Path{}
	for _, s := range p {
		switch s.Op {
		case geom.Move:
			q.MoveTo(s.P[0].X, s.P[0].Y)
		case geom.Line:
			q.LineTo(s.P[0].X, s.P[0].Y)
		case geom.Quad:
			q.QuadTo(s.P[0].X, s.P[0].Y, s.P[1].X, s.P[1].Y)
		case geom.Cube:
			q.CubeTo(s.P[0].X, s.P[0].Y, s.P[1].X, s.P[1].Y, s.P[2].X, s.P[2].Y)
		case geom.Close:
			q.Close()
		}
	}
	return q
}

func (l *layer) stroke(o Stroke, m geom.Affine) {
	reach := o.Line.Weight / 2 * MitreLimit
	if !l.touches(rectPath(o.Path.Bounds().Grow(reach)).Transform(m).Bounds()) {
		return
	}
	scale := math.Sqrt(math.Abs(m.A*m.D - m.B*m.C))
	l.fill(outlineStroke(o.Path, o.Line, canvas.PixelTolerance/scale), m, o.Colour.NRGBA())
}

// clip draws on a layer of its own and lays it down through the clip's shape:
// the rasteriser knows no clipping.
func (l *layer) clip(o Clip, m geom.Affine) {
	b := o.Path.Transform(m).Bounds()
	box := image.Rect(int(math.Floor(b.Min.X)), int(math.Floor(b.Min.Y)), int(math.Ceil(b.Max.X)), int(math.Ceil(b.Max.Y))).Intersect(l.box)
	if b.Empty() || box.Empty() {
		return
	}
	inner, mask := newLayer(l.book, box, nil), newLayer(l.book, box, nil)
	inner.steps(o.Ops, m)
	mask.fill(o.Path, m, color.NRGBA{A: 255})
	draw.DrawMask(l.img, box.Sub(l.box.Min), inner.img, image.Point{}, mask.img, image.Point{}, draw.Over)
}

func (l *layer) words(o Words, m geom.Affine) {
	l.fill(l.book.outlines(o), m, o.Style.Colour.NRGBA())
}
