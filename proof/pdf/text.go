package pdf

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"codeberg.org/go-pdf/fpdf"

	"yokeline/proof/page"
)

// adopted is a face that the document embeds.
type adopted struct {
	family   string
	resource string // its name in page content, without the slash
	runes    map[rune]bool
}

// adoptFaces registers the faces that the book's pages use.
func (d *document) adoptFaces(b *page.Book) error {
	used := map[page.Weight]bool{}
	for _, p := range b.Pages() {
		findFaces(p.Ops(), used)
	}
	for _, w := range [...]page.Weight{page.Regular, page.SemiBold} {
		if !used[w] {
			continue
		}
		family := fmt.Sprintf("plex%d", 400+200*int(w))
		d.out.AddUTF8FontFromBytes(family, "", b.FontData(w))
		resource, err := d.resourceName(family)
		if err != nil {
			return err
		}
		d.out.SetFont(family, "", 1) // bookmarks are written as UTF-16 only with such a face in force
		d.faces[w] = &adopted{family: family, resource: resource, runes: map[rune]bool{}}
	}
	return d.out.Error()
}

func findFaces(ops []page.Op, used map[page.Weight]bool) {
	for _, op := range ops {
		switch o := op.(type) {
		case page.Words:
			used[o.Style.Weight] = true
		case page.Clip:
			findFaces(o.Ops, used)
		case page.Use:
			findFaces(o.Art.Ops(), used)
		}
	}
}

var selectsFont = regexp.MustCompile(`/(F[0-9a-f]+) `)

// resourceName reads off a scratch form what the library calls the face in
// page content; it has no method that tells.
func (d *document) resourceName(family string) (string, error) {
	form := d.out.CreateTemplateCustom(fpdf.PointType{}, fpdf.SizeType{Wd: 1, Ht: 1}, func(t *fpdf.Tpl) { t.SetFont(family, "", 1) })
	found := selectsFont.FindAllSubmatch(form.Bytes(), -1) // the form takes over the face in force; the last is ours
	if found == nil {
		return "", fmt.Errorf("the PDF library does not name face %s in its content", family)
	}
	return string(found[len(found)-1][1]), nil
}

// markRunes tells the library which characters to keep of each face. It keeps
// a face's list while it sets text, so the characters are set once on a form
// that is thrown away.
func (d *document) markRunes() {
	for _, w := range [...]page.Weight{page.Regular, page.SemiBold} {
		f := d.faces[w]
		if f == nil {
			continue
		}
		var all []rune
		for r := range f.runes {
			all = append(all, r)
		}
		slices.Sort(all)
		d.out.CreateTemplateCustom(fpdf.PointType{}, fpdf.SizeType{Wd: 1, Ht: 1}, func(t *fpdf.Tpl) {
			t.SetFont(f.family, "", 1)
			t.Text(0, 0, string(all))
		})
	}
}

// words writes one line as one text object: the characters as they are, and
// between two of them the correction by which the set glyphs differ from the
// face's own advances (kerning and tracking). Glyphs off the baseline, placed
// marks, are moved to on their own.
func (s *stream) words(o page.Words) {
	f := s.doc.faces[o.Style.Weight]
	em := o.Style.Size * page.MMPerPoint
	s.fillColour(o.Style.Colour)
	s.out = append(s.out, "BT /"...)
	s.out = append(s.out, f.resource...)
	s.out = append(s.out, ' ')
	s.rounded(5, []float64{em}).op("Tf")
	for start := 0; start < len(o.Glyphs); {
		end := start + 1
		for end < len(o.Glyphs) && o.Glyphs[end].Y == o.Glyphs[start].Y {
			end++
		}
		s.numbers(1, 0, 0, -1, o.X+o.Glyphs[start].X, o.Y+o.Glyphs[start].Y).op("Tm")
		s.run(f, o.Style.Weight, o.Glyphs[start:end], em)
		start = end
	}
	s.op("ET")
}

// run writes glyphs of one height as two-byte character codes.
func (s *stream) run(f *adopted, w page.Weight, glyphs []page.Glyph, em float64) {
	var b strings.Builder
	b.WriteString("[<")
	pen := glyphs[0].X
	for _, g := range glyphs {
		if shift := (pen - g.X) / em * 1000; shift > 0.05 || shift < -0.05 {
			b.WriteByte('>')
			b.Write(page.AppendNumber(nil, shift, 1))
			b.WriteByte('<')
			pen = g.X
		}
		fmt.Fprintf(&b, "%04X", g.Rune)
		f.runes[g.Rune] = true
		pen += g.Advance * em
	}
	b.WriteString(">]")
	s.op(b.String() + "TJ")
}
