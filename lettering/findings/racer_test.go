package findings_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
)

const racerJob = `yokeline: 1
team: Herons
sport: basketball
units: in
garment: {cut: racerback-tank, colour: "#14284b"}
pieces:
  back name: {face: graduate, height: 2 1/2in, colour: "#ffffff"}
fit: {same: none}
players:
- {name: Wojciechowskie, number: 7, size: M}
- {name: Wojciechowskie, number: 8, size: YXS}
`

func sizedFrom(t *testing.T, text string) *sizes.Sized {
	t.Helper()
	job, faults := order.ReadJob("job.yaml", []byte(text))
	require.Empty(t, faults)
	s, err := sizes.Resolve(context.Background(), &job.Order, sizes.Options{Face: typeface.Embedded})
	require.NoError(t, err)
	return s
}

func TestFourteenLettersOnARacerbackAreOverWithWhatMendsIt(t *testing.T) {
	s := sizedFrom(t, racerJob)
	got := about(findings.Check(nil, findings.Of(s)), "name width")
	require.Len(t, got, 2)
	for i, p := range s.Players {
		piece, _ := p.Piece(garment.BackName)
		require.Equal(t, fit.Over, piece.Name.Verdict, p.Size)
		assert.Equal(t, findings.Violation, got[i].Severity)
		assert.Contains(t, got[i].Remedy, "Wojciechowskie")
	}
	grown, _ := s.Players[0].Piece(garment.BackName)
	kid, _ := s.Players[1].Piece(garment.BackName)
	assert.Less(t, kid.Name.Limit, 0.8*grown.Name.Limit, "the racer of a youth XS is that much narrower")

	// An adult M has the cloth and only convention is against it: the limit that the
	// remedy writes out must do. A youth XS has not, at any limit.
	assert.Contains(t, got[0].Remedy, "write limit: 13 13/16 in for the back name, which the seams leave room for")
	assert.NotContains(t, got[1].Remedy, "limit:")
	wide := sizedFrom(t, strings.Replace(racerJob, "height: 2 1/2in", "height: 2 1/2in, limit: 13 13/16in", 1))
	mended, _ := wide.Players[0].Piece(garment.BackName)
	assert.NotEqual(t, fit.Over, mended.Name.Verdict)
	still := findings.Check(nil, findings.Of(wide))
	for _, r := range about(still, "clearance") {
		assert.Contains(t, r.Remedy+r.Measured, "youth XS", "on an adult M it keeps clear of every seam")
	}

	// Lower letters are offered to both, and do.
	for i, p := range s.Players {
		piece, _ := p.Piece(garment.BackName)
		k := -1
		for n, w := range piece.Name.WouldFit {
			if w.Kind == fit.LowerLetters {
				k = n
			}
		}
		require.GreaterOrEqual(t, k, 0, p.Size)
		way := piece.Name.WouldFit[k]
		assert.Less(t, way.Height, 0.6*63.5)
		require.NotNil(t, way.Name)
		assert.NotEqual(t, fit.Over, way.Name.Verdict, i)
		assert.LessOrEqual(t, way.Name.InkWidth, piece.Name.Limit)
	}
}

func TestAnArchTooTightForOnePlayerIsAFindingWithTheSmallestRadius(t *testing.T) {
	job := strings.NewReplacer("racerback-tank", "two-button", "height: 2 1/2in", "height: 2in, shape: radial arch, radius: 3 1/2in", "Wojciechowskie, number: 7", "Ng, number: 7", "size: YXS", "size: L").Replace(racerJob)
	s := sizedFrom(t, job)
	short, _ := s.Players[0].Piece(garment.BackName)
	long, _ := s.Players[1].Piece(garment.BackName)
	assert.Equal(t, fit.Full, short.Name.Verdict, "the order is made")
	require.NotNil(t, long.TooTight)
	assert.Equal(t, fit.Over, long.Name.Verdict)
	assert.Equal(t, fit.Straight.String(), long.Name.Form(), "drawn straight")
	got := about(findings.Check(nil, findings.Of(s)), "arch")
	require.Len(t, got, 1)
	assert.Equal(t, findings.Violation, got[0].Severity)
	assert.Contains(t, got[0].Required, "a radius of at least 5 1/4 in")
	radius := 0.0
	for _, r := range long.Remedies {
		if r.Kind == sizes.LargerRadius {
			radius = r.Radius
		}
	}
	require.GreaterOrEqual(t, radius, long.TooTight.Smallest)
	assert.InDelta(t, long.TooTight.Smallest, radius, 12.8, "the next half inch")
	assert.Contains(t, got[0].Remedy, "radius 5 1/2 in")
	mended, _ := sizedFrom(t, strings.Replace(job, "3 1/2in", "5 1/2in", 1)).Players[1].Piece(garment.BackName)
	assert.Nil(t, mended.TooTight)
	assert.NotEqual(t, fit.Over, mended.Name.Verdict)
}

func TestTheLargestNumberUnderTheLeastOfTheRulesIsAFinding(t *testing.T) {
	s := sizedFrom(t, `yokeline: 1
team: Herons
sport: softball
units: in
garment: {cut: two-button, colour: "#14284b"}
pieces:
  back number: {face: graduate, height: largest, limit: 5in, colour: "#ffffff"}
players:
- {name: Ng, number: 88, size: M}
- {name: Vo, number: 12, size: M}
`)
	book, err := rulebook.Load("nfhs-softball")
	require.NoError(t, err)
	rules, err := book.In("2027")
	require.NoError(t, err)
	got := about(findings.Check(rules, findings.Of(s)), "number height")
	require.NotEmpty(t, got)
	for _, p := range s.Players {
		piece, _ := p.Piece(garment.BackNumber)
		assert.Equal(t, "full", piece.Number.Verdict)
		assert.Less(t, piece.Height(), rules.Position("back number").HeightMin.Length.MM())
	}
	assert.Equal(t, findings.Violation, got[0].Severity)
	assert.Empty(t, about(findings.Check(rules, findings.Of(s)), "number width"))
}

func TestAWiderLimitIsNoRemedyWhereItFlattensTheArch(t *testing.T) {
	// The width of a name on the circle of a narrow limit is not its width on that
	// of a wide one: such a limit would leave the name over again.
	for form, offered := range map[string]bool{"radial arch, rise: 1in": false, "radial arch, radius: 20in": true, "vertical arch, rise: 1in": true} {
		s := sizedFrom(t, strings.Replace(racerJob, "height: 2 1/2in", "height: 2 1/4in, shape: "+form, 1))
		got := about(findings.Check(nil, findings.Of(s)), "name width")
		require.NotEmpty(t, got, form)
		assert.Equal(t, offered, strings.Contains(got[0].Remedy, "write limit:"), "%s: %s", form, got[0].Remedy)
		if !offered {
			continue
		}
		_, limit, _ := strings.Cut(got[0].Remedy, "write limit: ")
		limit, _, _ = strings.Cut(limit, " for ")
		wide := sizedFrom(t, strings.Replace(racerJob, "height: 2 1/2in", "height: 2 1/4in, limit: "+limit+", shape: "+form, 1))
		piece, _ := wide.Players[0].Piece(garment.BackName)
		assert.NotEqual(t, fit.Over, piece.Name.Verdict, "%s with limit %s", form, limit)
	}
}
