// Package art writes one piece at 1:1 as SVG: paths only, every length in mm,
// nothing of a page around it.
package art

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"yokeline/lettering/geom"
)

// Layer is one closed shape of a piece and its colour, #rrggbb.
type Layer struct {
	ID     string
	Path   geom.Path
	Colour string
}

// Write writes the layers, the undermost first, in a drawing as large as box
// (mm, y up as lettering has it; SVG has y down). The letters keep the face's
// own curves.
func Write(w io.Writer, title string, box geom.Rect, layers []Layer) error {
	var out strings.Builder
	width, height := figure(box.Width()), figure(box.Height())
	fmt.Fprintf(&out, "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%smm\" height=\"%smm\" viewBox=\"%s %s %s %s\">\n",
		width, height, figure(box.Min.X), figure(-box.Max.Y), width, height)
	fmt.Fprintf(&out, "<title>%s</title>\n", escape(title))
	for _, l := range layers {
		fmt.Fprintf(&out, "<path id=\"%s\" fill=\"%s\" d=\"%s\"/>\n", escape(l.ID), escape(l.Colour), Data(l.Path))
	}
	out.WriteString("</svg>\n")
	_, err := io.WriteString(w, out.String())
	return err
}

// Data returns a path as the value of an SVG d attribute, y turned down, four
// decimals of a mm: finer than any cutter and coarser than the last bits of
// arithmetic.
func Data(p geom.Path) string {
	var out strings.Builder
	letters := [...]string{geom.Move: "M", geom.Line: "L", geom.Quad: "Q", geom.Cube: "C", geom.Close: "Z"}
	points := [...]int{geom.Move: 1, geom.Line: 1, geom.Quad: 2, geom.Cube: 3, geom.Close: 0}
	for _, s := range p {
		out.WriteString(letters[s.Op])
		for i, q := range s.P[:points[s.Op]] {
			if i > 0 {
				out.WriteByte(' ')
			}
			out.WriteString(figure(q.X) + " " + figure(-q.Y))
		}
	}
	return out.String()
}

// figure prints a length with at most four decimals and without a negative 0.
func figure(mm float64) string {
	s := strings.TrimRight(strings.TrimRight(strconv.FormatFloat(mm, 'f', 4, 64), "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

func escape(s string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;").Replace(s)
}
