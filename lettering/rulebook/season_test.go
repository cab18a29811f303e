package rulebook

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAFigureHoldsInItsSeasons(t *testing.T) {
	zero := func(r *Rules) *Figure { return r.Numbers.Zero }
	double := func(r *Rules) *Figure { return r.Numbers.DoubleZero }
	digits := func(r *Rules) *Figure { return r.Numbers.Digits }
	body := func(r *Rules) *Figure { return r.Contrast.Body }
	back := func(r *Rules) *Figure { return r.Position("back number").HeightMin }
	for _, c := range []struct {
		id, season string
		of         func(*Rules) *Figure
		want       string
	}{
		{"nfhs-football", "2021", zero, "illegal"},
		{"nfhs-football", "2022", zero, "legal"},
		{"nfhs-football", "2021-12-31", zero, "illegal"},
		{"nfhs-football", "2022-01-01", zero, "legal"},
		{"nfhs-football", "2023", body, "or border"},
		{"nfhs-football", "2023-24", body, "or border"},
		{"nfhs-football", "2024-25", body, "yes"},
		{"nfhs-boys-lacrosse", "2025", back, "12in"},
		{"nfhs-boys-lacrosse", "2026", back, "8in"},
		{"nfhs-boys-lacrosse", "2024-25", back, "12in"},
		{"nfhs-boys-lacrosse", "2025-26", back, "8in"}, // played in the spring of 2026
		{"nfhs-boys-lacrosse", "2025-12-31", back, "12in"},
		{"nfhs-volleyball", "2027", double, "legal"},
		{"nfhs-volleyball", "2028", double, "illegal"}, // played in the autumn of 2028
		{"nfhs-volleyball", "2027-28", double, "legal"},
		{"nfhs-volleyball", "2028-06-30", double, "legal"},
		{"nfhs-volleyball", "2028-07-01", double, "illegal"},
		{"ncaa-basketball", "2022-23", digits, "0-5"},
		{"ncaa-basketball", "2023-24", digits, "0-9"},
		{"ncaa-basketball", "2023-03-14", digits, "0-5"},
		{"nfhs-basketball", "2024", body, "yes"}, // the season that begins in 2024
		{"nfhs-basketball", "2023", body, "or border"},
		{"wftda", "2015", back, "4in"},
		{"wftda", "2015-16", back, "4in"},
		{"wftda", "2016", back, "6in"},
		{"fiba-basketball", "2017", back, "20cm"},
		{"fiba-basketball", "2018", back, "16cm"},
	} {
		r, err := load(t, c.id).In(c.season)
		require.NoError(t, err)
		require.NotNil(t, c.of(r), "%v %s", c.id, c.season)
		assert.Equal(t, c.want, c.of(r).Is, "%v %s", c.id, c.season)
		assert.Equal(t, c.season, r.Season)
	}
}

func TestAnythingElseIsNoSeason(t *testing.T) {
	for _, season := range []string{"", "27", "2027-29", "2027-27", "2027-1-1", "2027-13-01", "2027-02-30", "2027-01-01-01", "+027", "2027 ", "soon", "20270"} {
		_, err := load(t, "nfl").In(season)
		require.ErrorContains(t, err, "is not a season", season)
	}
}

func TestASchoolYearMayCrossTheCentury(t *testing.T) {
	_, err := load(t, "nfl").In("2099-00")
	require.NoError(t, err)
}
