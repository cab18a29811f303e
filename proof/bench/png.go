package bench

import (
	"errors"
	"fmt"
	"image"
	"image/color"
	"io"
	"math"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/renderers/rasterizer"

	"yokeline/lettering/geom"
	"yokeline/lettering/layers"
	"yokeline/proof/page"
)

// DPI is the resolution of pictures for direct-to-film, in dots per inch: common
// practice, no source.
const DPI = 300

// mostPixels bounds a picture at 100 million pixels, 400 MB.
const mostPixels = 100e6

// PNG writes the printed layers of the art as a picture at DPI on a transparent
// ground, cut to the ink (up to a pixel larger), mirrored as the art is. Pixels
// are opaque or empty, as half-transparent ones print as a veil of white. Art
// without printed layers, or too large, is an error.
func (b *Bench) PNG(w io.Writer, art layers.Art, o Options) error {
	return b.picture(w, art, o, layers.Print)
}

// WhitePNG writes the white under the colours as a picture as large as that of
// PNG, in black on a transparent ground, so that it can be seen.
func (b *Bench) WhitePNG(w io.Writer, art layers.Art, o Options) error {
	return b.picture(w, art, o, layers.White)
}

func (b *Bench) picture(w io.Writer, art layers.Art, o Options, kind layers.Kind) error {
	box := art.Ink
	if o.Unsigned {
		box.Min.Y -= strip
	}
	r, err := newRaster(box)
	if err != nil {
		return err
	}
	found := false
	for _, l := range art.Layers {
		if l.Kind != kind {
			continue
		}
		colour := page.Colour(0)
		if kind == layers.Print {
			if colour, err = page.ParseColour(l.Colour.Hex); err != nil {
				return fmt.Errorf("colour of %s: %w", l.Name, err)
			}
		}
		found = true
		r.fill(l.Region.Path(), colour)
	}
	if !found {
		return errors.New("the art has no " + string(kind) + " layer: no picture is made of it; take SVG or PDF")
	}
	if o.Unsigned {
		r.fill(b.unsigned(art.Ink.Min, art.Ink.Width()), unsignedColour)
	}
	return page.EncodePNG(w, r.hard(), DPI)
}

// raster is a picture under work.
type raster struct {
	img *image.RGBA
	ras *rasterizer.Rasterizer
	at  geom.Affine
}

func newRaster(box geom.Rect) (*raster, error) {
	const k = DPI / 25.4
	wide, high := math.Ceil(box.Width()*k-1e-6), math.Ceil(box.Height()*k-1e-6)
	if !(wide >= 1 && high >= 1 && wide*high <= mostPixels) {
		return nil, fmt.Errorf("a picture of %.0f × %.0f mm at %d dpi is too large; take SVG or PDF", box.Width(), box.Height(), DPI)
	}
	r := &raster{img: image.NewRGBA(image.Rect(0, 0, int(wide), int(high)))}
	// The ink stands in the middle of the pixels that hold it.
	c := box.Center()
	r.at = geom.Translate(-c.X, -c.Y).Then(geom.Scale(k, k)).Then(geom.Translate(wide/2, high/2))
	r.ras = rasterizer.FromImage(r.img, canvas.DPMM(1), canvas.LinearColorSpace{})
	return r, nil
}

func (r *raster) fill(p geom.Path, c page.Colour) {
	q := &canvas.Path{}
	for _, s := range p.Transform(r.at) {
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
	look := canvas.DefaultStyle
	look.Fill = canvas.Paint{Color: color.RGBA(c.NRGBA())}
	r.ras.RenderPath(q, look, canvas.Identity)
}

// hard returns the picture with every pixel opaque or empty.
func (r *raster) hard() *image.NRGBA {
	out := image.NewNRGBA(r.img.Rect)
	for i := 0; i < len(r.img.Pix); i += 4 {
		p := r.img.Pix[i : i+4]
		if p[3] < 128 {
			continue
		}
		for k := range 3 {
			out.Pix[i+k] = uint8(min(255, (int(p[k])*255+int(p[3])/2)/int(p[3])))
		}
		out.Pix[i+3] = 255
	}
	return out
}
