package tally

import (
	"encoding/json"
	"io"
	"math"

	"yokeline/lettering/order"
)

type countOut struct {
	Players   int           `json:"players"`
	Pieces    int           `json:"pieces"`
	Garments  []blankOut    `json:"garments"`
	ToAsk     []string      `json:"size_to_ask"`
	Kits      []kitOut      `json:"characters"`
	Sizes     []sizeOut     `json:"pieces_by_size"`
	Materials []materialOut `json:"materials"`
	Allowance float64       `json:"allowance"`
	Gap       float64       `json:"gap_mm"`
	Picks     []pickOut     `json:"pick_list"`
	Notes     []string      `json:"notes"`
}

type colourOut struct {
	Name string `json:"name"`
	Hex  string `json:"hex"`
}

type blankOut struct {
	Cut    string     `json:"cut"`
	Group  string     `json:"group"`
	Size   string     `json:"size"`
	Colour colourOut  `json:"colour"`
	Trim   *colourOut `json:"trim"`
	Count  int        `json:"count"`
}

type kitOut struct {
	Kind     string         `json:"kind"`
	Face     string         `json:"face"`
	Height   float64        `json:"height_mm"`
	Form     string         `json:"form"`
	Colour   colourOut      `json:"colour"`
	Outlines []outlineOut   `json:"outlines"`
	Counts   []characterOut `json:"counts"`
	Total    int            `json:"total"`
}

type outlineOut struct {
	Width float64 `json:"width_mm"`
	colourOut
}

type characterOut struct {
	Text  string `json:"text"`
	Count int    `json:"count"`
}

type sizeOut struct {
	Group  string `json:"group"`
	Size   string `json:"size"`
	Place  string `json:"place"`
	Pieces int    `json:"pieces"`
}

type materialOut struct {
	Name          string     `json:"name"`
	Colour        *colourOut `json:"colour"`
	Shapes        int        `json:"shapes"`
	Ink           float64    `json:"true_area_mm2"`
	Box           float64    `json:"box_area_mm2"`
	Roll          *float64   `json:"roll_mm"`
	Length        *float64   `json:"length_mm"`
	WithAllowance *float64   `json:"length_with_allowance_mm"`
	Laid          bool       `json:"as_arranged"`
	TooWide       bool       `json:"wider_than_roll"`
}

type pickOut struct {
	Player string         `json:"player"`
	Name   string         `json:"name"`
	Number string         `json:"number"` // text
	Group  string         `json:"group"`
	Size   string         `json:"size"` // empty when it is not known
	Pieces []pickPieceOut `json:"pieces"`
}

type pickPieceOut struct {
	Place  string    `json:"place"`
	Text   string    `json:"text"`
	Height float64   `json:"height_mm"`
	Spots  []spotOut `json:"spots"`
}

type spotOut struct {
	Sheet    string `json:"sheet"`
	Position string `json:"position"`
	Part     string `json:"part"`
}

// WriteJSON writes the whole count. Numbers of players are text; lengths are mm
// and areas mm², both to four decimals.
func (c *Count) WriteJSON(w io.Writer) error {
	out := countOut{
		Players: c.Players, Pieces: c.Pieces, Allowance: c.Allowance, Gap: c.Gap, Notes: c.Notes,
		Garments: []blankOut{}, ToAsk: []string{}, Kits: []kitOut{}, Sizes: []sizeOut{}, Materials: []materialOut{}, Picks: []pickOut{},
	}
	for _, b := range c.Blanks {
		out.Garments = append(out.Garments, blankOut{string(b.Cut), string(b.Size.Group), b.Size.Letter, inJSON(b.Colour), pointer(b.Trim), b.Count})
	}
	for _, i := range c.ToAsk {
		out.ToAsk = append(out.ToAsk, c.Picks[i].Label)
	}
	for _, k := range c.Kits {
		out.Kits = append(out.Kits, k.out())
	}
	for _, r := range c.Sizes {
		out.Sizes = append(out.Sizes, sizeOut{string(r.Size.Group), r.Size.Letter, string(r.Place), r.Pieces})
	}
	for _, m := range c.Materials {
		out.Materials = append(out.Materials, m.out())
	}
	for _, p := range c.Picks {
		out.Picks = append(out.Picks, p.out())
	}
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(out)
}

func (k Kit) out() kitOut {
	o := kitOut{Kind: k.Kind, Face: k.Face, Height: four(k.Height), Form: k.Form, Colour: inJSON(k.Colour), Total: k.Total, Outlines: []outlineOut{}}
	for _, l := range k.Outlines {
		o.Outlines = append(o.Outlines, outlineOut{four(l.Width.MM()), inJSON(l.Colour)})
	}
	for _, c := range k.Counts {
		o.Counts = append(o.Counts, characterOut(c))
	}
	return o
}

func (m Material) out() materialOut {
	o := materialOut{Name: m.Name(), Colour: pointer(m.Colour), Shapes: m.Shapes, Ink: four(m.Ink), Box: four(m.Box), Laid: m.Laid, TooWide: m.TooWide}
	known := func(v float64) *float64 {
		if v == 0 {
			return nil
		}
		v = four(v)
		return &v
	}
	o.Roll, o.Length, o.WithAllowance = known(m.Roll), known(m.Length), known(m.WithAllowance)
	return o
}

func (p Pick) out() pickOut {
	o := pickOut{Player: p.Label, Name: p.Name, Number: p.Number, Pieces: []pickPieceOut{}}
	if p.Known {
		o.Group, o.Size = string(p.Size.Group), p.Size.Letter
	}
	for _, piece := range p.Pieces {
		row := pickPieceOut{Place: string(piece.Place), Text: piece.Text, Height: four(piece.Height), Spots: []spotOut{}}
		for _, s := range piece.Spots {
			row.Spots = append(row.Spots, spotOut(s))
		}
		o.Pieces = append(o.Pieces, row)
	}
	return o
}

func inJSON(c order.Colour) colourOut { return colourOut{c.Name, c.Hex} }

func pointer(c order.Colour) *colourOut {
	if c.Hex == "" {
		return nil
	}
	o := inJSON(c)
	return &o
}

func four(v float64) float64 { return math.Round(v*1e4) / 1e4 }
