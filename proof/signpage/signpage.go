// Package signpage writes the proof as one page for a browser: every player
// drawn, every choice to make, and the sign-off as a small file to send back. The
// page holds everything it needs, asks nothing of any network, and shows all but
// the answering without script.
//
// The words are those of the sheets, the drawings come from the same code, and
// the file that the page saves is one that package signoff reads.
package signpage

import (
	"bytes"
	"crypto/sha256"
	_ "embed" // the page's own files
	"encoding/base64"
	"errors"
	"html/template"
	"io"
	"sync"

	"yokeline/lettering/choices"
	"yokeline/lettering/findings"
	"yokeline/lettering/signoff"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
	"yokeline/proof/sheets"
)

// Input is everything the page is made from.
type Input struct {
	Sized       *sizes.Sized
	Results     []findings.Result  // of the rule book and the roster
	Questions   []choices.Question // what the coach must decide
	Fingerprint string             // 64 hexadecimal digits
	// Onto is the signed revision that players were added to, as for the paper; 0
	// for a proof of its own. Who is signed stands there to compare, answered.
	Onto int
	// Face opens a face by the name the job uses, as when the order was sized.
	Face func(name string) (*typeface.Face, error)
}

//go:embed page.html
var pageHTML string

//go:embed page.css
var pageStyle string

//go:embed page.js
var pageScript string

//go:embed seal.js
var sealScript string

//go:embed tools.js
var toolScript string

// document is what the template fills in.
type document struct {
	Policy string
	Style  template.CSS
	Script template.JS
	Store  template.HTML // drawings that others use
	Order  record        // what the script works with
	*content
}

// Write writes the page. Same input, same bytes. The error says what could not
// be drawn, or is the writer's.
func Write(w io.Writer, in Input) error {
	if in.Sized == nil || in.Face == nil || len(in.Fingerprint) < 16 {
		return errors.New("the page needs a sized order, its fingerprint and a way to open its faces")
	}
	screen, err := sheets.NewScreen(sheets.Input{
		Sized: in.Sized, Results: in.Results, Fingerprint: in.Fingerprint, Face: in.Face, Paper: sheets.PaperFor(in.Sized.Order.Units),
	})
	if err != nil {
		return err
	}
	c, err := newContent(in, screen)
	if err != nil {
		return err
	}
	style, err := styleWithFonts(c.texts()...)
	if err != nil {
		return err
	}
	data, err := c.page(style)
	if err != nil {
		return err
	}
	_, err = w.Write(data)
	return err
}

// parsedPage is the template, read once.
var parsedPage = sync.OnceValues(func() (*template.Template, error) { return template.New("page").Parse(pageHTML) })

// page fills the template in.
func (c *content) page(style string) ([]byte, error) {
	page, err := parsedPage()
	if err != nil {
		return nil, err
	}
	script := toolScript + sealScript + pageScript
	var out bytes.Buffer
	err = page.Execute(&out, document{
		Policy: policy(style, script), Style: template.CSS(style), Script: template.JS(script),
		Order: c.record(), Store: c.store(), content: c,
	})
	return out.Bytes(), err
}

// policy forbids everything but the page's own style and script, known by their
// digests, and fonts and pictures that lie in it (Content Security Policy Level
// 3, W3C).
func policy(style, script string) string {
	digest := func(text string) string {
		sum := sha256.Sum256([]byte(text))
		return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
	}
	return "default-src 'none'; style-src " + digest(style) + "; script-src " + digest(script) +
		"; font-src data:; img-src data:; base-uri 'none'; form-action 'none'"
}

// record is what the page's script works with and puts into the file it saves.
type record struct {
	Format      string           `json:"format"`
	Fingerprint string           `json:"fingerprint"`
	Short       string           `json:"short"`
	Team        string           `json:"team"`
	Order       string           `json:"order"`
	Revision    string           `json:"revision"`
	File        string           `json:"file"`
	Players     []recordPlayer   `json:"players"`
	Questions   []recordQuestion `json:"questions"`
	Known       []recordKnown    `json:"known"`
}

type recordPlayer struct {
	Name   string `json:"name"`
	Number string `json:"number"`
	Size   string `json:"size"`
	Sized  bool   `json:"sized"`
	Signed bool   `json:"signed"` // before, and here only to compare with
}

type recordQuestion struct {
	ID      string      `json:"id"`
	Open    bool        `json:"open"`
	Shows   bool        `json:"shows"`   // the card can show what is chosen
	Players []int       `json:"players"` // indexes of those whose cards show the choice
	Ways    []recordWay `json:"ways"`
}

type recordWay struct {
	Letter string `json:"letter"`
	Kind   string `json:"kind"`
	Title  string `json:"title"`
	Detail string `json:"detail"`
	Player int    `json:"player"` // who takes another number; -1 for none
	Renews bool   `json:"renews"` // needs a new proof by itself, with nothing to write
}

// recordKnown is a rule that stays broken when a way is chosen.
type recordKnown struct {
	Rule     string `json:"rule"`
	What     string `json:"what"`
	Question string `json:"question"`
	Letter   string `json:"letter"`
}

// record gathers what the script needs.
func (c *content) record() record {
	o := c.in.Sized.Order
	r := record{
		Format: signoff.Format, Fingerprint: c.in.Fingerprint, Short: signoff.Short(c.in.Fingerprint),
		Team: o.Team, Order: o.Number, Revision: o.Revision, File: fileName(o.Team),
		Players: []recordPlayer{}, Questions: []recordQuestion{}, Known: c.known(),
	}
	for i, p := range c.in.Sized.Players {
		r.Players = append(r.Players, recordPlayer{p.Name, p.Number, c.screen.Players[i].Size, p.Garment != nil, c.in.Onto > 0 && p.Signed})
	}
	for i, q := range c.in.Questions {
		asked := recordQuestion{ID: q.ID, Open: q.Open(), Shows: q.Piece != nil && q.Piece.Side == c.screen.Side, Players: c.concerned(q), Ways: []recordWay{}}
		for k, w := range q.Ways {
			asked.Ways = append(asked.Ways, recordWay{w.Letter, w.Kind, c.Questions[i].Ways[k].Title, c.Questions[i].Ways[k].Detail, w.Player, w.NewProof() && w.Player < 0})
		}
		r.Questions = append(r.Questions, asked)
	}
	return r
}
