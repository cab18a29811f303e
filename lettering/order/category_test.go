package order

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const plainJob = `yokeline: 1
team: Herons
garment: {cut: crew-tee, colour: "#14284b"}
pieces: {back number: {height: 8in}}
players:
  - {name: Lind, number: 7, size: M}
`

func TestASportIsReadByAnyOfItsWords(t *testing.T) {
	for written, want := range map[string]string{
		"ice hockey": "ice hockey", "Ice-Hockey": "ice hockey", "hockey": "hockey", "Field Hockey": "field hockey", "waterpolo": "water polo",
		"American football": "football", "gridiron": "football", "association football": "soccer", "Soccer": "soccer", "fastpitch": "softball",
		"T-ball": "baseball", "girls lacrosse": "lacrosse", "track and field": "track", "other": "other",
	} {
		job, faults := ReadJob("j", []byte(plainJob+"sport: "+written+"\n"))
		require.Empty(t, faults, written)
		assert.Equal(t, want, job.Order.Sport, written)
	}
}

func TestEveryOtherWordForASportIsReadAsOneThatIsKnown(t *testing.T) {
	for _, other := range otherSports() {
		assert.Contains(t, Sports(), other[1], other[0])
		assert.NotContains(t, Sports(), other[0])
	}
}

func TestAnUnknownSportNamesTheNearest(t *testing.T) {
	for written, want := range map[string]string{
		"sofball": "did you mean softball?", "grid iron fotball": "did you mean gridiron football?", "asociation football": "did you mean association football?",
	} {
		_, faults := ReadJob("j", []byte(plainJob+"sport: "+written+"\n"))
		require.Len(t, faults, 1, written)
		assert.Equal(t, want, faults[0].Hint, written)
		assert.Equal(t, 7, faults[0].Place.Line)
		assert.Equal(t, 8, faults[0].Place.Column)
	}
	_, faults := ReadJob("j", []byte(plainJob+"sport: quoits\n"))
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].Hint, "use basketball, soccer,")
}

func TestACategoryIsOneThatTheRuleBookKnows(t *testing.T) {
	of := WithCategories(func(rules string) ([]string, bool) {
		switch rules {
		case "lakeside":
			return []string{"10U", "12U", "women"}, true
		case "plain":
			return nil, true
		}
		return nil, false
	})
	for _, c := range []struct{ lines, want, fault, hint string }{
		{"rules: lakeside\ncategory: women\n", "women", "", ""},
		{"rules: lakeside\ncategory: Women\n", "women", "", ""},
		{"rules: lakeside\ncategory: U12\n", "12U", "", ""},
		{"rules: lakeside\ncategory: under 10\n", "10U", "", ""},
		{"rules: lakeside\ncategory: men\n", "", `category: rule book lakeside has no figures of its own for "men"`, "use 10U, 12U or women, or delete the line for everyone else"},
		{"rules: lakeside\ncategory: veterans\n", "", `category: rule book lakeside has no figures of its own for "veterans"`, "use 10U, 12U or women, or delete the line for everyone else"},
		{"rules: plain\ncategory: women\n", "", "category: rule book plain has the same figures for everyone", "delete the line"},
		{"category: women\n", "", "category: a category needs a rule book", "name the rule book with rules:, or delete the line"},
	} {
		job, faults := ReadJob("j", []byte(plainJob+c.lines), of)
		if c.fault == "" {
			require.Empty(t, faults, c.lines)
			assert.Equal(t, c.want, job.Order.Category, c.lines)
			continue
		}
		require.Len(t, faults, 1, c.lines)
		assert.Equal(t, c.fault, faults[0].Message)
		assert.Equal(t, c.hint, faults[0].Hint)
		assert.NotZero(t, faults[0].Place.Line)
		assert.NotZero(t, faults[0].Place.Column)
	}
}
