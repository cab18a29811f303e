package signpage

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/go-text/typesetting/font"
	ot "github.com/go-text/typesetting/font/opentype"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"
	"pgregory.net/rapid"

	"yokeline/fonts"
	"yokeline/lettering/choices"
	"yokeline/lettering/findings"
	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
	"yokeline/proof/sheets"
)

// demo is the demo order as the command line reads it; sizing it with its ways
// out takes longest, so all tests share it.
var demo = sync.OnceValues(func() (Input, error) {
	name, files := order.Demo()
	o, err := order.Read(name, func(file string) ([]byte, error) { return fs.ReadFile(files, file) })
	if err != nil {
		return Input{}, err
	}
	return resolved(o)
})

// resolved sizes and checks an order.
func resolved(o *order.Order) (Input, error) {
	book, err := rulebook.Load(o.Rules)
	if err != nil {
		return Input{}, err
	}
	rules, err := book.In(o.Season)
	if err != nil {
		return Input{}, err
	}
	sized, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, Rules: rules, Workers: 2})
	if err != nil {
		return Input{}, err
	}
	results := findings.Check(rules, findings.Of(sized))
	return Input{Sized: sized, Results: results, Questions: choices.Of(sized, results), Fingerprint: sized.Fingerprint(), Face: typeface.Embedded}, nil
}

func demoInput(t testing.TB) Input {
	t.Helper()
	in, err := demo()
	require.NoError(t, err)
	return in
}

// demoPage is the demo order as a page.
var demoPage = sync.OnceValues(func() ([]byte, error) {
	in, err := demo()
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	err = Write(&out, in)
	return out.Bytes(), err
})

func written(t testing.TB) []byte {
	t.Helper()
	data, err := demoPage()
	require.NoError(t, err)
	return data
}

// markup is a small order whose names look like markup; its last player has no
// size.
var markup = sync.OnceValues(func() (Input, error) {
	roster := "number,name,size,player\n1,O'Brien & <Sons>,M,\"O'Brien & <b>\"\n00,Nuñez-Ård,L,\n7,De la Ó,,\n"
	name, files := order.Demo()
	o, err := order.Read(name, func(file string) ([]byte, error) {
		if file == name {
			return fs.ReadFile(files, file)
		}
		return []byte(roster), nil
	})
	if err != nil {
		return Input{}, err
	}
	return resolved(o)
})

// walk visits an element and all in it.
func walk(n *html.Node, visit func(*html.Node)) {
	visit(n)
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		walk(c, visit)
	}
}

func attribute(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

func textOf(n *html.Node) string {
	var b strings.Builder
	walk(n, func(n *html.Node) {
		if n.Type == html.TextNode {
			b.WriteString(n.Data)
		}
	})
	return b.String()
}

func parsed(t require.TestingT, data []byte) *html.Node {
	root, err := html.Parse(bytes.NewReader(data))
	require.NoError(t, err)
	return root
}

// all lists the elements that are wanted.
func all(root *html.Node, wanted func(*html.Node) bool) []*html.Node {
	var out []*html.Node
	walk(root, func(n *html.Node) {
		if n.Type == html.ElementNode && wanted(n) {
			out = append(out, n)
		}
	})
	return out
}

func byTag(root *html.Node, tag string) []*html.Node {
	return all(root, func(n *html.Node) bool { return n.Data == tag })
}

func byClass(root *html.Node, class string) []*html.Node {
	return all(root, func(n *html.Node) bool { return slices.Contains(strings.Fields(attribute(n, "class")), class) })
}

func TestThePageHoldsEverythingItNeeds(t *testing.T) {
	data := written(t)
	root := parsed(t, data)
	walk(root, func(n *html.Node) {
		for _, a := range n.Attr {
			switch {
			case a.Key == "href":
				assert.True(t, strings.HasPrefix(a.Val, "#"), "%s leads to %q", n.Data, a.Val)
			case a.Key == "src" || a.Key == "style" || a.Key == "srcset" || a.Key == "action" || strings.HasPrefix(a.Key, "on"):
				t.Errorf("%s has %s", n.Data, a.Key)
			}
		}
	})
	rest := strings.ReplaceAll(string(data), "http://www.w3.org/2000/svg", "")
	for _, word := range []string{"http:", "https:", "//cdn", "@import", "url(//", "fetch(", "XMLHttpRequest", "sendBeacon"} {
		assert.NotContains(t, rest, word)
	}
	assert.Equal(t, "en", attribute(byTag(root, "html")[0], "lang"))
	assert.Equal(t, "Alder Point Herons: proof to sign", textOf(byTag(root, "title")[0]))
	for _, face := range regexp.MustCompile(`url\(([^#][^)]{0,30})`).FindAllStringSubmatch(string(data), -1) {
		assert.Contains(t, face[1], "data:font/woff;base64,")
	}
}

// Whatever is used by its id is there once.
func TestEveryReferenceIsMet(t *testing.T) {
	root := parsed(t, written(t))
	ids := map[string]int{}
	walk(root, func(n *html.Node) {
		if id := attribute(n, "id"); id != "" {
			ids[id]++
		}
	})
	for id, n := range ids {
		assert.Equal(t, 1, n, id)
	}
	walk(root, func(n *html.Node) {
		for _, key := range []string{"href", "aria-labelledby", "aria-describedby", "for"} {
			for _, id := range strings.Fields(strings.TrimPrefix(attribute(n, key), "#")) {
				assert.Equal(t, 1, ids[strings.TrimPrefix(id, "#")], "%s=%s", key, id)
			}
		}
	})
}

func TestThePolicyKnowsExactlyTheStyleAndTheScript(t *testing.T) {
	root := parsed(t, written(t))
	meta := all(root, func(n *html.Node) bool { return attribute(n, "http-equiv") == "Content-Security-Policy" })
	require.Len(t, meta, 1)
	content := attribute(meta[0], "content")
	hash := func(n *html.Node) string {
		sum := sha256.Sum256([]byte(textOf(n)))
		return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
	}
	styles, scripts := byTag(root, "style"), byTag(root, "script")
	require.Len(t, styles, 1)
	require.Len(t, scripts, 2)
	assert.Equal(t, "application/json", attribute(scripts[0], "type"))
	assert.Contains(t, content, "default-src 'none'")
	assert.Contains(t, content, "style-src "+hash(styles[0])+";")
	assert.Contains(t, content, "script-src "+hash(scripts[1])+";")
	assert.NotContains(t, content, "unsafe")
}

// The record is what the saved file repeats: it is the roster to the letter.
func recordOf(t require.TestingT, root *html.Node) record {
	var r record
	for _, n := range byTag(root, "script") {
		if attribute(n, "id") == "order" {
			require.NoError(t, json.Unmarshal([]byte(textOf(n)), &r))
		}
	}
	return r
}

func TestEveryPlayerAndEveryChoiceIsThere(t *testing.T) {
	in := demoInput(t)
	root := parsed(t, written(t))
	r := recordOf(t, root)
	cards := byClass(root, "card")
	require.Len(t, cards, len(in.Sized.Players))
	require.Len(t, r.Players, len(in.Sized.Players))
	for i, p := range in.Sized.Players {
		assert.Equal(t, p.Name, r.Players[i].Name)
		assert.Equal(t, p.Number, r.Players[i].Number)
		assert.Equal(t, p.Number, textOf(byClass(cards[i], "number")[0]))
		name, _ := p.Piece(garment.BackName)
		assert.Equal(t, strings.ReplaceAll(name.Text(), "\n", " "), textOf(byClass(cards[i], "name")[0]))
		assert.NotEmpty(t, byClass(cards[i], "shirt"))
	}
	questions := byClass(root, "question")
	require.Len(t, questions, len(in.Questions))
	for i, q := range in.Questions {
		assert.Equal(t, q.ID, r.Questions[i].ID)
		ways := byClass(questions[i], "way")
		require.Len(t, ways, len(q.Ways))
		for k, w := range q.Ways {
			assert.Equal(t, w.Letter, textOf(byClass(ways[k], "letter")[0]))
			assert.Equal(t, w.Kind, r.Questions[i].Ways[k].Kind)
			assert.Equal(t, w.Name != nil || w.Kind == choices.AsItStands, len(byClass(ways[k], "picture")) == 1, "%s %s", q.ID, w.Kind)
		}
	}
	assert.Equal(t, in.Fingerprint, r.Fingerprint)
}

func TestNamesThatLookLikeMarkupAreText(t *testing.T) {
	in, err := markup()
	require.NoError(t, err)
	var page bytes.Buffer
	require.NoError(t, Write(&page, in))
	root := parsed(t, page.Bytes())
	r, cards := recordOf(t, root), byClass(root, "card")
	for i, want := range []struct{ name, cut, full string }{
		{"O'Brien & <Sons>", "O’BRIEN & <SONS>", "O'Brien & <b>"}, {"Nuñez-Ård", "NUÑEZ-ÅRD", ""}, {"De la Ó", "DE LA Ó", ""},
	} {
		assert.Equal(t, want.name, r.Players[i].Name)
		assert.Equal(t, want.cut, textOf(byClass(cards[i], "name")[0]))
		if want.full != "" {
			assert.Equal(t, want.full, textOf(byClass(cards[i], "full")[0]))
		}
	}
	assert.False(t, r.Players[2].Sized)
	assert.Empty(t, byClass(cards[2], "right"), "a player without a size cannot be ticked")
	assert.Contains(t, textOf(cards[2]), "size not known")
}

func TestTheSamePageTwice(t *testing.T) {
	var again bytes.Buffer
	require.NoError(t, Write(&again, demoInput(t)))
	assert.True(t, bytes.Equal(written(t), again.Bytes()))
}

// Whatever a roster holds stays text: it opens no element, ends no script, and
// reaches the saved file as it is.
func TestNoTextBreaksOutOfThePage(t *testing.T) {
	in := demoInput(t)
	screen, err := sheets.NewScreen(sheets.Input{Sized: in.Sized, Results: in.Results, Fingerprint: in.Fingerprint, Face: in.Face})
	require.NoError(t, err)
	c, err := newContent(in, screen)
	require.NoError(t, err)
	c.art.symbols, c.art.drawings = nil, screen.Book.NewDrawings("") // the drawings hold no text of a roster
	for i := range c.Cards {
		c.Cards[i].Picture, c.Cards[i].Other = "", ""
	}
	elements := func(root *html.Node) int { return len(all(root, func(*html.Node) bool { return true })) }
	first, err := c.page("")
	require.NoError(t, err)
	want := elements(parsed(t, first))
	hostile := rapid.SliceOfN(rapid.SampledFrom([]string{
		"<", ">", "</script>", "<!--", "-->", "<script>", "</style>", "</svg>", "&", "&lt;", "\"", "'", "`", "${x}", "{{.}}", "\\", "\\u003c",
		"\u2028", "\u2029", "]]>", "O’Brien & <Sons>", "Ñ", "\u00a0", "=", "javascript:", "\t",
	}), 1, 6)
	rapid.Check(t, func(rt *rapid.T) {
		text := strings.Join(hostile.Draw(rt, "text"), "")
		i := rapid.IntRange(0, len(c.Cards)-1).Draw(rt, "player")
		player, was := &in.Sized.Players[i], c.Cards[i]
		name, team := player.Name, in.Sized.Order.Team
		defer func() { player.Name, in.Sized.Order.Team, c.Cards[i], c.Team = name, team, was, team }()
		player.Name, in.Sized.Order.Team, c.Team = text, text, text
		c.Cards[i].Name, c.Cards[i].Full, c.Cards[i].Label = text, text+".", text
		data, err := c.page("")
		require.NoError(rt, err)
		root := parsed(rt, data)
		require.Equal(rt, want, elements(root))
		r := recordOf(rt, root)
		require.Equal(rt, text, r.Players[i].Name)
		require.Equal(rt, text, r.Team)
		require.Equal(rt, text+".", textOf(byClass(byClass(root, "card")[i], "full")[0]))
	})
}

func TestFileNamesAreFitForEveryDevice(t *testing.T) {
	for team, want := range map[string]string{
		"Alder Point Herons": "alder-point-herons-signoff.json", "Ñandú 1. FC/Süd": "nandu-1-fc-sud-signoff.json",
		"東京": "signoff.json", "../../etc": "etc-signoff.json", "": "signoff.json",
	} {
		assert.Equal(t, want, fileName(team), team)
	}
}

// The cut-down faces are read by another reader than the one that cut them, and
// draw every letter as the whole face does.
func TestTheFacesOfThePageDrawAsTheWholeOnes(t *testing.T) {
	for _, w := range weights {
		entry, _ := fonts.Lookup(w.id)
		data, err := fonts.Read(entry.File)
		require.NoError(t, err)
		small, err := subset(data, kept())
		require.NoError(t, err)
		assert.Less(t, len(small), 24_000)
		packed, err := ot.NewLoader(bytes.NewReader(small))
		require.NoError(t, err)
		cut, err := font.NewFont(packed)
		require.NoError(t, err)
		whole, err := font.ParseTTF(bytes.NewReader(data))
		require.NoError(t, err)
		face := font.NewFace(cut)
		for _, r := range kept() {
			was, has := whole.NominalGlyph(r)
			is, kept := face.NominalGlyph(r)
			require.Equal(t, has, kept, "U+%04X", r)
			if has {
				require.Equal(t, whole.GlyphData(was), face.GlyphData(is), "U+%04X", r)
				require.Equal(t, whole.HorizontalAdvance(was), face.HorizontalAdvance(is), "U+%04X", r)
			}
		}
	}
}
