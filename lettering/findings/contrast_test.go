package findings

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/rulebook"
)

func TestARatioNeverLooksBetterThanItIs(t *testing.T) {
	assert.Equal(t, "6.0 to 1", ratioText(6))
	assert.Equal(t, "5.9 to 1", ratioText(5.9999))
	assert.Equal(t, "4.5 to 1", ratioText(4.59))
}

// Red on navy is told apart by the usual eye (3.66 to 1) and not by one that
// lacks the red cone (2.11 to 1, see package tint).
func TestARedGreenBlindEyeIsSpokenOfOnceForAPlace(t *testing.T) {
	wearer := func(name, body string) Wearer {
		m := NewMeasured("back number", KindNumber, "7")
		m.BodyColour, m.GarmentHex = body, "#14284b"
		return Wearer{Player: name, Number: "7", Pieces: []Measured{m}}
	}
	about := func(body string) (found []Result) {
		for _, r := range Check(&rulebook.Rules{}, Subject{Asked: []string{"back number"}, Players: []Wearer{wearer("Quill", body), wearer("Adair", body)}}) {
			if r.What == "colour of the number, red-green blind eye" {
				found = append(found, r)
			}
		}
		return found
	}
	red := about("#ff0000")
	require.Len(t, red, 1)
	assert.Equal(t, Advice, red[0].Severity)
	assert.Contains(t, red[0].Remedy, "red-green blind eye")
	assert.Empty(t, about("#ffffff"))
	assert.Empty(t, about("navy"), "a colour that cannot be read is not guessed")
}
