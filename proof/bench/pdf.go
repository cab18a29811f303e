package bench

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"time"
	"unicode/utf16"

	"yokeline/lettering/geom"
	"yokeline/lettering/layers"
	"yokeline/proof/page"
)

// pointsPerMM is exact: a point is 1/72 in.
const pointsPerMM = 72 / 25.4

// PDF writes the art as one page of its size, with an optional-content layer for
// each layer and a Separation colour for each spot (ISO 32000-2, 8.6.6.4 and
// 8.11). The writer is our own: the library of the proofs writes spot colours in
// the order of a map, so that no two files are alike, and mixes them in CMYK only.
// Everything overprints: what lies on a white or on a trap must not cut it away
// when the plates are parted. It wraps errors of the writer and of colours that
// cannot be read.
func (b *Bench) PDF(w io.Writer, art layers.Art, o Options) error {
	groups, err := b.groups(art, o)
	if err != nil {
		return err
	}
	return writePDF(w, groups, art, o)
}

func writePDF(w io.Writer, groups []group, art layers.Art, o Options) error {
	d := &document{}
	d.draw(groups, Extent(art, o))
	d.objects(groups, art, o)
	_, err := w.Write(d.out.Bytes())
	return err
}

// Objects that every file has, by number; those of layers and spots follow.
const (
	catalogue = iota + 1
	pages
	onlyPage
	contents
	info
	firstFree
)

// document is a PDF under work.
type document struct {
	out     bytes.Buffer
	content []byte
	spots   []paint // in the order of their first use
	offsets []int
}

func (d *document) draw(groups []group, box geom.Rect) {
	d.number(pointsPerMM, 8).op("0 0").number(pointsPerMM, 8)
	d.number(-box.Min.X*pointsPerMM, 8).number(-box.Min.Y*pointsPerMM, 8).op("cm")
	d.op("1 j /Over gs")
	for i, g := range groups {
		d.op(fmt.Sprintf("/OC /L%d BDC", i))
		if g.fill != nil {
			d.colour(*g.fill, "cs", "scn", "rg")
		}
		if g.line != nil {
			d.colour(*g.line, "CS", "SCN", "RG")
			d.number(g.weight, decimals).op("w [")
			for _, v := range g.dash {
				d.number(v, decimals)
			}
			d.op("] 0 d")
		}
		d.path(g.path)
		d.op(map[[2]bool]string{{true, true}: "B", {true, false}: "f", {false, true}: "S", {false, false}: "n"}[[2]bool{g.fill != nil, g.line != nil}])
		d.op("EMC")
	}
}

func (d *document) op(text string) *document {
	d.content = append(append(d.content, text...), '\n')
	return d
}

func (d *document) number(v float64, places int) *document {
	d.content = append(page.AppendNumber(d.content, v, places), ' ')
	return d
}

// colour sets a spot at full tint, or a colour that the printer mixes.
func (d *document) colour(p paint, space, tint, mixed string) {
	if p.spot == "" {
		d.rgb(p.colour).op(mixed)
		return
	}
	k := 0
	for k < len(d.spots) && d.spots[k].spot != p.spot {
		k++
	}
	if k == len(d.spots) {
		d.spots = append(d.spots, p)
	}
	d.op(fmt.Sprintf("/S%d %s 1 %s", k, space, tint))
}

func (d *document) rgb(c page.Colour) *document {
	r, g, b := c.RGB()
	for _, v := range [3]uint8{r, g, b} {
		d.number(float64(v)/255, decimals)
	}
	return d
}

// path raises quadratic curves to cubic ones, which is exact.
func (d *document) path(p geom.Path) {
	var at geom.Point
	for _, s := range p {
		switch s.Op {
		case geom.Move:
			d.points("m", s.P[0])
			at = s.P[0]
		case geom.Line:
			d.points("l", s.P[0])
			at = s.P[0]
		case geom.Quad:
			d.points("c", at.Lerp(s.P[0], 2.0/3), s.P[1].Lerp(s.P[0], 2.0/3), s.P[1])
			at = s.P[1]
		case geom.Cube:
			d.points("c", s.P[:]...)
			at = s.P[2]
		case geom.Close:
			d.op("h")
		}
	}
}

func (d *document) points(op string, points ...geom.Point) {
	for _, p := range points {
		d.number(p.X, decimals).number(p.Y, decimals)
	}
	d.op(op)
}

// objects writes the file around the content.
func (d *document) objects(groups []group, art layers.Art, o Options) {
	box, layer, spot := Extent(art, o), firstFree, firstFree+len(groups)
	d.out.WriteString("%PDF-1.7\n%\xe2\xe3\xcf\xd3\n")
	list := references(layer, len(groups))
	d.object("<</Type/Catalog/Pages %d 0 R/PageMode/UseOC/OCProperties<</OCGs[%s]/D<</Name%s/Order[%s]/ON[%s]>>>>>>",
		pages, list, textString("layers"), list, list)
	d.object("<</Type/Pages/Kids[%d 0 R]/Count 1>>", onlyPage)
	d.object("<</Type/Page/Parent %d 0 R/MediaBox%s/TrimBox%s/ArtBox%s/Contents %d 0 R/Resources<</Properties<<%s>>/ColorSpace<<%s>>"+
		"/ExtGState<</Over<</OP true/op true>>>>>>>>",
		pages, rectangle(box, box), rectangle(art.Box, box), rectangle(art.Ink, box), contents, named("L", layer, len(groups)), named("S", spot, len(d.spots)))
	var packed bytes.Buffer
	z := zlib.NewWriter(&packed)
	z.Write(d.content) // a buffer takes everything
	z.Close()
	d.object("<</Length %d/Filter/FlateDecode>>\nstream\n%s\nendstream", packed.Len(), packed.String())
	made := o.Made
	if made.IsZero() {
		made = time.Date(2000, time.January, 1, 0, 0, 0, 0, time.UTC)
	}
	d.object("<</Title%s/Producer(yokeline)/CreationDate(D:%sZ)>>", textString(title(art, o)), made.UTC().Format("20060102150405"))
	for _, g := range groups {
		d.object("<</Type/OCG/Name%s>>", textString(groupName(g)))
	}
	for _, s := range d.spots {
		d.object("[/Separation/%s/DeviceRGB<</FunctionType 2/Domain[0 1]/N 1/C0[1 1 1]/C1[%s]>>]", escapedName(s.spot), shares(s.colour))
	}
	d.trailer()
}

// groupName is what a layer is called in the list of layers.
func groupName(g group) string {
	if g.order == 0 {
		return g.name
	}
	return fmt.Sprintf("%d %s", g.order, joined(g.name, g.colour))
}

func (d *document) object(format string, args ...any) {
	d.offsets = append(d.offsets, d.out.Len())
	fmt.Fprintf(&d.out, "%d 0 obj\n", len(d.offsets))
	fmt.Fprintf(&d.out, format, args...)
	d.out.WriteString("\nendobj\n")
}

func (d *document) trailer() {
	start := d.out.Len()
	fmt.Fprintf(&d.out, "xref\n0 %d\n0000000000 65535 f \n", len(d.offsets)+1)
	for _, at := range d.offsets {
		fmt.Fprintf(&d.out, "%010d 00000 n \n", at)
	}
	fmt.Fprintf(&d.out, "trailer\n<</Size %d/Root %d 0 R/Info %d 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(d.offsets)+1, catalogue, info, start)
}

func references(first, n int) string {
	var out []byte
	for i := range n {
		out = fmt.Appendf(out, "%d 0 R ", first+i)
	}
	return string(out)
}

func named(prefix string, first, n int) string {
	var out []byte
	for i := range n {
		out = fmt.Appendf(out, "/%s%d %d 0 R", prefix, i, first+i)
	}
	return string(out)
}

// rectangle is a box on the page that frame fills, in points.
func rectangle(r, frame geom.Rect) string {
	out := []byte{'['}
	for _, v := range [4]float64{r.Min.X - frame.Min.X, r.Min.Y - frame.Min.Y, r.Max.X - frame.Min.X, r.Max.Y - frame.Min.Y} {
		out = append(page.AppendNumber(out, v*pointsPerMM, decimals), ' ')
	}
	return string(append(out, ']'))
}

func shares(c page.Colour) string {
	r, g, b := c.RGB()
	var out []byte
	for _, v := range [3]uint8{r, g, b} {
		out = append(page.AppendNumber(out, float64(v)/255, decimals), ' ')
	}
	return string(out)
}

// textString is a text in UTF-16, as hex digits (ISO 32000-2, 7.9.2.2).
func textString(text string) string {
	out := []byte("<FEFF")
	for _, u := range utf16.Encode([]rune(text)) {
		out = fmt.Appendf(out, "%04X", u)
	}
	return string(append(out, '>'))
}

// escapedName writes every byte of a name that is not a plain letter or digit by
// its number (ISO 32000-2, 7.3.5).
func escapedName(name string) string {
	var out []byte
	for _, c := range []byte(name) {
		if c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' || c == '-' || c == '.' {
			out = append(out, c)
			continue
		}
		out = fmt.Appendf(out, "#%02X", c)
	}
	return string(out)
}
