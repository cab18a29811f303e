package rulebook

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func load(t *testing.T, id string) *Book {
	t.Helper()
	b, err := Load(id)
	require.NoError(t, err)
	return b
}

func TestEveryBookLoadsUnderItsOwnID(t *testing.T) {
	require.GreaterOrEqual(t, len(IDs()), 60)
	for _, id := range IDs() {
		b := load(t, id)
		assert.Equal(t, id, b.ID)
		for _, other := range b.Also {
			assert.Equal(t, id, load(t, other).ID, "by its other id")
		}
		_, err := b.In("2027")
		require.NoError(t, err)
	}
}

func TestEveryFigureHasASourceAndSaysHowItWasComeBy(t *testing.T) {
	for _, id := range IDs() {
		used := map[string]bool{}
		for _, f := range load(t, id).Figures {
			name := id + ": " + f.About + " " + f.Name
			assert.Contains(t, []How{HowRead, HowMemory}, f.How, name)
			assert.NotEmpty(t, f.Source.Title, name)
			assert.NotEmpty(t, f.Source.Publisher, name)
			assert.Equal(t, f.How == HowMemory, f.Source.Kind == "unseen", "%s: what is recalled cites the book to confirm it in, what was read a source that was seen", name)
			if strings.Contains(f.Name, "about") || strings.Contains(f.Name, "advised") {
				assert.True(t, f.Advice, "%s is approximate or recommended", name)
			}
			used[f.Source.Key] = true
		}
		for _, s := range load(t, id).Sources {
			assert.True(t, used[s.Key], "%s: nothing was taken from %s", id, s.Key)
		}
	}
}

// Read in the publications that the books cite; kept apart from the files so
// that a slip in one of them shows.
func TestWellKnownFiguresAreInTheBooks(t *testing.T) {
	for _, c := range []struct {
		id, season, place, figure, want string
		how                             How
	}{
		{"nfhs-football", "2026", "back number", "height at least", "10 in", HowRead},
		{"nfhs-football", "2026", "front number", "height at least", "8 in", HowRead},
		{"nfhs-football", "2026", "front number", "stroke about", "1 1/2 in", HowRead},
		{"nfhs-basketball", "2026-27", "front number", "height at least", "4 in", HowRead},
		{"nfhs-basketball", "2026-27", "back number", "height at least", "6 in", HowMemory},
		{"nfhs-basketball", "2026-27", "front number", "stroke at least", "3/4 in", HowRead},
		{"nfhs-softball", "2027", "back number", "height at least", "6 in", HowRead},
		{"nfhs-softball", "2027", "back number", "border at most", "1/4 in", HowRead},
		{"nfhs-baseball", "2027", "back number", "height at least", "8 in", HowMemory},
		{"nfhs-ice-hockey", "2026-27", "sleeve number", "height at least", "4 in", HowRead},
		{"ncaa-mens-lacrosse", "2027", "back number", "height at least", "12 in", HowRead},
		{"uefa-equipment", "2027", "back number", "height at most", "35 cm", HowRead},
		{"uefa-equipment", "2027", "names", "height at most", "7.5 cm", HowRead},
		{"fifa-equipment", "2027", "back number", "stroke at least", "3 cm", HowRead},
		{"fiba-basketball", "2027", "back number", "height at least", "16 cm", HowRead},
		{"fivb-volleyball", "2027", "back number", "height at least", "20 cm", HowRead},
		{"ihf-handball", "2027", "front number", "height at least", "10 cm", HowRead},
		{"iff-floorball", "2027", "back number", "height at least", "200 mm", HowRead},
		{"wfdf", "2027", "back number", "stroke at least", "3 cm", HowRead},
		{"bwf-badminton", "2027", "names", "height at least", "6 cm", HowRead},
		{"lfp-ligue1", "2026-27", "back number", "height exactly", "20 cm or 25 cm", HowRead},
	} {
		r, err := load(t, c.id).In(c.season)
		require.NoError(t, err)
		i := slices.IndexFunc(r.Figures, func(f *Figure) bool { return f.About == c.place && f.Name == c.figure })
		require.GreaterOrEqual(t, i, 0, "%v", c)
		assert.Equal(t, c.want, r.Figures[i].Text(), "%v", c)
		assert.Equal(t, c.how, r.Figures[i].How, "%v", c)
	}
}

func TestBooksTellWhatWasReadFromWhatIsRecalled(t *testing.T) {
	for _, id := range []string{"ncaa-soccer", "ncaa-ice-hockey", "usa-hockey", "ncaa-womens-lacrosse", "ncaa-baseball"} {
		read, memory := load(t, id).Count()
		assert.Zero(t, read, id)
		assert.NotZero(t, memory, id)
	}
	b := load(t, "uefa-equipment")
	read, memory := b.Count()
	assert.Zero(t, memory)
	assert.Equal(t, len(b.Figures)-1, read, "its one remark is no figure")
}

func TestAnUnknownIDSuggestsNearOnes(t *testing.T) {
	for id, want := range map[string]string{"nfhs-softbal": "nfhs-softball", "softball": "nfhs-softball", "nfhs_football": "nfhs-football", "uefa": "uefa-equipment", "NFHS-Football": "nfhs-football"} {
		_, err := Load(id)
		require.Error(t, err)
		assert.Contains(t, err.Error(), want)
	}
	_, err := Load("zzzz")
	require.Error(t, err)
	assert.Contains(t, err.Error(), "yokeline rules lists")
	_, err = Load("../books/nfl")
	require.Error(t, err)
}

func TestBooksAreFoundForTheSportOfAnOrder(t *testing.T) {
	assert.Equal(t, []string{"little-league", "ncaa-softball", "nfhs-softball", "usa-softball", "usssa-slowpitch-conference"}, ForSport("softball"))
	assert.Contains(t, ForSport("soccer"), "uefa-equipment")
	assert.NotContains(t, ForSport("football"), "uefa-equipment")
	assert.Contains(t, ForSport("Volleyball"), "fivb-beach-volleyball")
	assert.NotContains(t, ForSport("hockey"), "nfhs-field-hockey")
	assert.Contains(t, ForSport("hockey"), "nhl")
	assert.Equal(t, []string{"fih-hockey", "nfhs-field-hockey"}, ForSport("field hockey"))
	assert.Empty(t, ForSport("chess"))
	assert.Empty(t, ForSport(""))
}

func TestLinesListEveryFigureInAFixedOrder(t *testing.T) {
	b := load(t, "nfhs-boys-lacrosse")
	lines := b.Lines()
	require.Len(t, lines, len(b.Figures))
	assert.Equal(t, "numbers", lines[0].About)
	assert.Equal(t, "book", lines[len(lines)-1].About)
	i := slices.IndexFunc(lines, func(l Line) bool { return l.Figure == "height at least" && l.Seasons == "from 2026" })
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, Line{
		About: "back number", Figure: "height at least", Is: "8 in", Rule: "1-9-1h(3)",
		Source: "NFHS, Comments on the rules (2026)", How: HowRead, Seasons: "from 2026",
	}, lines[i])
	r, err := b.In("2026")
	require.NoError(t, err)
	assert.Less(t, len(r.Lines()), len(lines), "the figure of 2025 is not in force")
}

func TestChangesNamesWhatDiffersBetweenTwoSeasons(t *testing.T) {
	changes, err := load(t, "nfhs-football").Changes("2021", "2024")
	require.NoError(t, err)
	got := map[string]string{}
	for _, c := range changes {
		was, now := "", ""
		if c.Was != nil {
			was = c.Was.Is
		}
		if c.Now != nil {
			now = c.Now.Is
		}
		got[c.About+" "+c.Figure] = was + " > " + now
	}
	assert.Equal(t, map[string]string{
		"numbers at least": "1 > 0", "numbers zero": "illegal > legal",
		"contrast body of number": "or border > yes", "contrast one solid colour": " > yes",
		"contrast border instead at least": "0.25in > ",
	}, got)
	same, err := load(t, "nfhs-football").Changes("2025", "2026")
	require.NoError(t, err)
	assert.Empty(t, same)
	_, err = load(t, "nfhs-football").Changes("soon", "2026")
	require.Error(t, err)
	_, err = load(t, "nfhs-football").Changes("2026", "later")
	require.Error(t, err)
}

func TestACategoryTakesItsOwnFigureAndTheGeneralOneElsewhere(t *testing.T) {
	b := load(t, "uefa-equipment")
	assert.Equal(t, []string{"women"}, b.Categories())
	women, err := b.InFor("2026", "women")
	require.NoError(t, err)
	p := women.Position("back number")
	assert.Equal(t, "20 cm", p.HeightMin.Text())
	assert.Equal(t, "35 cm", p.HeightMax.Text())
	for _, f := range women.Figures {
		assert.False(t, f.About == "back number" && f.Name == "height at least" && f.Is == "25cm", "the general figure is not in force beside it")
	}
	_, err = b.InFor("2026", "veterans")
	require.ErrorContains(t, err, "women")
	_, err = load(t, "nfl").InFor("2026", "women")
	require.ErrorContains(t, err, "leave the category out")
}

func TestPositionsComeInAFixedOrderAndMayBeAskedForOfNothing(t *testing.T) {
	r, err := load(t, "nfhs-soccer").In("2026")
	require.NoError(t, err)
	var got []string
	for _, p := range r.Positions {
		got = append(got, p.Place)
	}
	assert.Equal(t, []string{"back number", "front number", "shorts number"}, got)
	assert.Nil(t, r.Position("sleeve number"))
	assert.Nil(t, (*Rules)(nil).Position("back number"))
}

func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		if _, err := Load("nfhs-basketball"); err != nil {
			b.Fatal(err)
		}
	}
}
