package findings_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
)

// stuck is a number that is 8 in high, where at the demanded 10 in it would be
// wider than the room.
func stuck(ways string) findings.Measured {
	m := number("back number", 203.2)
	m.Text, m.Verdict, m.Width, m.Limit = "88", "full", 260, 300
	m.Conflict = &findings.Conflict{Face: "graduate", Height: 254, Width: 333.375, Limit: 300, OverBy: 33.375, Ways: ways}
	return m
}

func TestFaceRuleAndRoomThatCannotAllHoldAreAFinding(t *testing.T) {
	const ways = "set it in oswald (10 in high, 11 1/4 in wide), or order youth M"
	got := about(findings.Check(rules(t, "nfhs-football", "2026", ""), wearing(stuck(ways))), "face, rule and room")
	require.Len(t, got, 1)
	f := got[0].Finding
	assert.Equal(t, findings.Violation, f.Severity)
	assert.Equal(t, "Quill", f.Player)
	assert.Equal(t, "88 in graduate is 13 1/8 in wide at 10 in high", f.Measured)
	assert.Equal(t, "10 in high, at most 11 3/4 in wide", f.Required)
	assert.Equal(t, "1 3/8 in", f.By, "rounded up")
	assert.Equal(t, "1-5-1c", f.Rule)
	assert.Equal(t, "read", f.How)
	assert.Equal(t, "the back number of Quill: "+ways, f.Remedy)
}

func TestWhereNothingOfOursHelpsTheGarmentIsToBeMeasured(t *testing.T) {
	const want = "measure the garment of Quill: 88 would need 1 3/8 in more room, and none of our faces, gaps and sizes helps"
	got := about(findings.Check(rules(t, "nfhs-football", "2026", ""), wearing(stuck(""))), "face, rule and room")
	require.Len(t, got, 1)
	assert.Equal(t, want, got[0].Remedy)
	over := stuck("")
	over.Verdict, over.OverBy, over.Width = "over", 33.375, 333.375
	results := findings.Check(rules(t, "nfhs-football", "2026", ""), wearing(over))
	assert.Empty(t, about(results, "face, rule and room"), "its width says it already")
	got = about(results, "number width")
	require.Len(t, got, 1)
	assert.Equal(t, want, got[0].Remedy)
}

func TestAFaceThatCannotBeAsHeavyAsTheRuleInItsRoomIsAFinding(t *testing.T) {
	m := stuck("")
	m.Conflict.OverBy, m.Conflict.StrokeShort = 0, 5
	r := rules(t, "fiba-basketball", "2026", "")
	require.NotNil(t, r.Position("back number").StrokeMin)
	got := about(findings.Check(r, wearing(m)), "face, rule and room")
	require.Len(t, got, 1)
	assert.Equal(t, "3/16 in", length.Plain(5, length.Inch, length.Down))
	assert.Equal(t, "1/4 in", got[0].By)
	assert.Contains(t, got[0].Remedy, "choose a heavier face for Quill")
	for name, change := range map[string]func(*findings.Conflict){
		"thicker digits do":  func(c *findings.Conflict) { c.Thicker = true },
		"not measurable":     func(c *findings.Conflict) { c.StrokeShort = math.NaN() },
		"nothing is missing": func(c *findings.Conflict) { c.StrokeShort = 0 },
	} {
		m := stuck("")
		m.Conflict.OverBy, m.Conflict.StrokeShort = 0, 5
		change(m.Conflict)
		assert.Empty(t, about(findings.Check(r, wearing(m)), "face, rule and room"), name)
	}
}

func TestEveryYouthNumberOfFootballHasAWayOutInWords(t *testing.T) {
	s := demo(t, func(o *order.Order) {
		o.Sport, o.Rules, o.Garment.Cut = "football", "nfhs-football", garment.FootballYoke
		var numbers []order.Piece
		for _, p := range o.Pieces {
			if p.Place == garment.BackNumber {
				p.Face, p.Height, p.Outlines = "alfa-slab-one", order.Height{By: order.ByRule}, nil
				numbers = append(numbers, p)
			}
		}
		o.Pieces, o.Notes = numbers, nil
		for i := range o.Players {
			o.Players[i].Size, o.Players[i].SizeKnown = garment.Size{Group: garment.Youth, Letter: garment.Sizes(garment.Youth)[i%5]}, true
		}
	})
	over := 0
	for _, r := range findings.Check(s.Rules, findings.Of(s)) {
		if r.What != "number width" {
			continue
		}
		over++
		assert.NotEmpty(t, r.Player)
		assert.NotEmpty(t, r.By)
		assert.Regexp(t, `^the back number of .+: (set|order) .+|^measure the garment of `, r.Remedy)
	}
	assert.Greater(t, over, 3)
}
