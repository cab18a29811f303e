package findings_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
)

const seamsJob = `yokeline: 1
team: Herons
sport: softball
units: in
garment: {cut: crew-tee, colour: "#14284b", clear: CLEAR}
pieces:
PIECES
players:
- {name: Quillfeathers, number: 88, size: YXS}
- {name: Featherstone, number: 10, size: L}
- {name: Vo, number: 7, size: L}
`

// checked sizes a small order and returns what its garments' lines have to say.
func checked(t *testing.T, clear, pieces string) []findings.Result {
	t.Helper()
	text := strings.NewReplacer("CLEAR", clear, "PIECES", pieces).Replace(seamsJob)
	job, faults := order.ReadJob("job.yaml", []byte(text))
	require.Empty(t, faults)
	s, err := sizes.Resolve(context.Background(), &job.Order, sizes.Options{Face: typeface.Embedded})
	require.NoError(t, err)
	return about(findings.Check(nil, findings.Of(s)), "clearance")
}

func TestWhatTheRoomDecidesKeepsClearOfEverySeam(t *testing.T) {
	for _, pieces := range []string{
		"  back name: {height: 2in}\n  back number: {height: 7in}",
		"  back name: {height: 2in, shape: radial arch, rise: 1in, outlines: [{width: 1/8in, colour: \"#ffffff\"}]}",
		"  back name: {height: 2in, shape: vertical arch, rise: 2in}",
		"  front name: {text: Herons, height: 3in, face: yellowtail, case: typed, tail: true}",
		"  front number: {height: 4in}\n  sleeve number: {height: 2in, outlines: [{width: 1/8in, colour: \"#ffffff\"}]}",
		"  left chest: {text: Herons, height: 1in}",
	} {
		assert.Empty(t, checked(t, "{}", pieces), pieces)
	}
}

func TestAPieceInTheMarginIsAdviceAndOneOverTheSeamAViolation(t *testing.T) {
	wide := "  back name: {height: 3in, limit: WIDE, below: 1 1/2in}"
	near := checked(t, "{}", strings.ReplaceAll(wide, "WIDE", "11in"))
	require.Len(t, near, 1, "%v", near)
	assert.Equal(t, findings.Advice, near[0].Severity)
	assert.Equal(t, "Quillfeathers", near[0].Player)
	assert.Equal(t, "back name", near[0].Place)
	assert.Regexp(t, `^[0-9/ ]+ in from the (left|right) armhole seam on size youth XS$`, near[0].Measured)
	assert.Equal(t, "at least 1/2 in", near[0].Required)
	assert.Equal(t, "common practice, no source", near[0].Source)
	assert.Regexp(t, `the back name of Quillfeathers comes too near to the .* armhole seam: limit it to [0-9/ ]+ in or leave its limit out; or it lies inside on size youth S$`, near[0].Remedy)
	assert.NotContains(t, near[0].Remedy, "arch", "a straight name cannot be straighter")

	over := checked(t, "{}", strings.ReplaceAll(wide, "WIDE", "14in"))
	require.NotEmpty(t, over)
	assert.Equal(t, findings.Violation, over[0].Severity)
	assert.Regexp(t, `in over the (left|right) armhole seam on size youth XS$`, over[0].Measured)

	arched := checked(t, "{}", strings.ReplaceAll(wide, "WIDE", "14in, shape: radial arch, rise: 1in"))
	require.NotEmpty(t, arched)
	assert.Contains(t, arched[0].Remedy, "or try a straighter arch")
}

func TestTheMarginsOfTheJobDecideAndAreNamedAsItsOwn(t *testing.T) {
	wide := "  back name: {height: 3in, limit: 11in, below: 1 1/2in}"
	own := checked(t, "{seam: 1in}", wide)
	require.NotEmpty(t, own)
	assert.Equal(t, "at least 1 in", own[0].Required)
	assert.Equal(t, "the job", own[0].Source)
	assert.Empty(t, checked(t, "{seam: 1in}", "  back name: {height: 2in}\n  back number: {height: 6in}"), "the room follows the margins")
	loose := checked(t, "{seam: 1mm, underarm: 1mm}", wide)
	assert.Empty(t, loose, "what hits 12 mm need not hit 1 mm")
}

// The remedies are tried: what they say is done, and the finding is gone.
func TestARemedyThatIsGivenMends(t *testing.T) {
	told := map[string]bool{}
	for _, pieces := range []string{
		"  back name: {height: 3in, limit: 11in, below: 1 1/2in}",
		"  back number: {height: 7in, limit: 16in, below: 1/4in}",
		"  front number: {height: 6in, below: 1/4in}",
	} {
		job, faults := order.ReadJob("job.yaml", []byte(strings.NewReplacer("CLEAR", "{}", "PIECES", pieces).Replace(seamsJob)))
		require.Empty(t, faults)
		for _, h := range hitsOf(t, &job.Order) {
			require.NotEmpty(t, h.Ways, "%s: %v", pieces, h)
			for _, way := range h.Ways {
				told[way.Words] = true
				for _, left := range hitsOf(t, mended(job.Order, h.Player, way)) {
					assert.NotEqual(t, h.Player, left.Player, "%s: %s %g leaves %v", pieces, way.Words, way.MM, left)
				}
			}
		}
	}
	assert.Subset(t, told, map[string]bool{"limit it to": true, "lower it by": true})
}

func hitsOf(t *testing.T, o *order.Order) []findings.Hit {
	t.Helper()
	s, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded})
	require.NoError(t, err)
	return findings.Of(s).Hits
}

// mended is the order as a way asks for it.
func mended(o order.Order, player string, way findings.Way) *order.Order {
	piece := o.Pieces[0]
	o.Players = append([]order.Player(nil), o.Players...)
	switch way.Words {
	case "limit it to":
		limit := length.FromMM(way.MM, length.Inch)
		piece.Limit = &limit
	case "lower it by":
		below := length.FromMM(piece.Below.MM()+way.MM, length.Inch)
		piece.Below = &below
	case "make it":
		piece.Height.Length = length.FromMM(way.MM, length.Inch)
	default:
		for i := range o.Players {
			if o.Players[i].Label() == player {
				o.Players[i].Size = garment.Size{Group: garment.Youth, Letter: "S"}
			}
		}
	}
	o.Pieces = []order.Piece{piece}
	return &o
}

func BenchmarkOfWithSeams(b *testing.B) {
	job, faults := order.ReadJob("job.yaml", []byte(strings.NewReplacer("CLEAR", "{}", "PIECES", "  back name: {height: 2in, shape: radial arch, rise: 1in}\n  back number: {height: 6in}").Replace(seamsJob)))
	require.Empty(b, faults)
	one := job.Order.Players[1]
	for i := range 300 {
		p := one
		p.Name = one.Name[:4+i%9] + string(rune('a'+i%26)) + string(rune('a'+i/26))
		job.Order.Players = append(job.Order.Players, p)
	}
	s, err := sizes.Resolve(context.Background(), &job.Order, sizes.Options{Face: typeface.Embedded, NoWaysOut: true})
	require.NoError(b, err)
	s.Order.Method = "" // no fine details
	for b.Loop() {
		findings.Of(s)
	}
}
