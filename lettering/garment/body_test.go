package garment

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// bodyBands are the chest (men) and bust (women) girths of EN 13402-3 letter
// codes in cm, lower and upper limit, read at second hand. Adult 4XL rests on one
// text only.
func bodyBands() map[Group][][2]float64 {
	return map[Group][][2]float64{
		Adult: {{78, 86}, {86, 94}, {94, 102}, {102, 110}, {110, 118}, {118, 129}, {129, 141}, {141, 154}},
		Women: {{74, 82}, {82, 90}, {90, 98}, {98, 107}, {107, 119}, {119, 131}, {131, 143}},
	}
}

// eases is what a garment is wider round the chest than the middle of its body
// band, mm: youth, adult, women. A design choice of each cut; common practice,
// no source.
func eases() map[Cut][3]float64 {
	return map[Cut][3]float64{
		CrewTee: {110, 80, 60}, VNeck: {110, 80, 60}, TwoButton: {140, 120, 100}, FullButton: {150, 140, 120},
		BasketballTank: {130, 120, 100}, RacerbackTank: {90, 70, 50}, Raglan: {120, 100, 80},
		FootballYoke: {170, 160, 140}, Hockey: {300, 320, 300}, Soccer: {120, 100, 80},
	}
}

func TestGarmentsAreWiderThanTheBodiesOfTheirBandByTheStatedEase(t *testing.T) {
	for cut, ease := range eases() {
		for i, g := range []Group{Youth, Adult, Women} {
			for k, l := range Sizes(g) {
				m, _, err := Standard(cut, Size{g, l})
				require.NoError(t, err)
				body := 0.0
				if g == Youth {
					body = 19.0 + 0.4826*statures[k]
				} else {
					band := bodyBands()[g][k]
					body = 5 * (band[0] + band[1])
					if cut != RacerbackTank { // a close knit may be narrower than the largest body of its band
						assert.GreaterOrEqual(t, 2*m.ChestHalf, band[1]*10, "%s %s %s is as wide as the largest body", cut, g, l)
					}
				}
				assert.InDelta(t, ease[i], 2*m.ChestHalf-body, 1, "%s %s %s", cut, g, l)
				assert.Positive(t, 2*m.ChestHalf-body)
			}
		}
	}
}

// Means of ANSUR II (2012 Anthropometric Survey of U.S. Army Personnel,
// NATICK/TR-15/007, public per-subject data), grouped here by EN 13402-3 band, in
// mm: chest, biacromial breadth, neck base girth, drop from the seventh cervical
// vertebra to the armpit and to the crotch.
type bodyMeans struct {
	letter                                    string
	chest, biacromial, neckBase, axilla, rise float64
}

func ansurMeans() map[Group][]bodyMeans {
	return map[Group][]bodyMeans{
		Adult: {
			{"XS", 845, 384, 385, 177, 634}, {"S", 913, 401, 404, 179, 652}, {"M", 984, 408, 418, 184, 659}, {"L", 1059, 415, 434, 188, 671},
			{"XL", 1135, 424, 452, 193, 684}, {"2XL", 1219, 435, 471, 197, 693}, {"3XL", 1318, 449, 489, 204, 714},
		},
		Women: {
			{"XS", 797, 353, 349, 150, 592}, {"S", 866, 359, 358, 154, 602}, {"M", 937, 366, 370, 157, 614}, {"L", 1017, 369, 381, 159, 621},
			{"XL", 1109, 374, 397, 161, 633}, {"2XL", 1211, 382, 419, 158, 630},
		},
	}
}

// Both sides of every tee must hold the measured people of its band: the chest
// goes in, the shoulder seam lies beyond the bone, the neck hole lets the neck
// through and the armhole lies below the armpit.
func TestTeesHoldTheMeasuredPeopleOfTheirBand(t *testing.T) {
	for g, rows := range ansurMeans() {
		for _, body := range rows {
			garment := must(t, CrewTee, Size{g, body.letter})
			m := garment.Measures()
			assert.Greater(t, 2*m.ChestHalf, body.chest, "%s %s chest", g, body.letter)
			assert.Greater(t, m.ShoulderWidth, body.biacromial, "%s %s shoulder", g, body.letter)
			assert.Less(t, m.ShoulderWidth, body.biacromial+100, "%s %s shoulder hangs no further than a hand's breadth past the bone", g, body.letter)
			assert.Greater(t, m.ArmholeDepth, body.axilla, "%s %s armhole", g, body.letter)
			assert.Greater(t, m.BodyLength, body.rise, "%s %s length covers the trunk", g, body.letter)
			f := garment.shape.(*frame)
			hole := 2 * (f.neckFront.Length() + f.neckBack.Length())
			assert.Greater(t, hole, body.neckBase, "%s %s neck hole", g, body.letter)
		}
	}
}

func TestChildrensTeesHoldTheMeasuredChildren(t *testing.T) {
	// 1977 child survey, UM-HSRI-77-17, means of boys by age, mm: stature, chest, biacromial breadth.
	for _, child := range []struct {
		letter               string
		stature, chest, bone float64
	}{{"XS", 1187, 591, 265}, {"S", 1305, 644, 288}, {"M", 1407, 694, 306}, {"L", 1515, 740, 329}, {"XL", 1633, 817, 356}} {
		m, _, err := Standard(CrewTee, Size{Youth, child.letter})
		require.NoError(t, err)
		assert.Greater(t, 2*m.ChestHalf, child.chest, child.letter)
		assert.Greater(t, m.ShoulderWidth, child.bone, child.letter)
		assert.InDelta(t, 0.42*child.stature, m.BodyLength, 0.03*child.stature, child.letter)
	}
}
