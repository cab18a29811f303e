package rulebook

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
)

// day is a date as the number yyyymmdd, so that days compare as numbers.
type day int

const (
	firstDay day = 0
	lastDay  day = math.MaxInt
)

func on(year, month, date int) day { return day(year*10000 + month*100 + date) }

// span is what a written season covers.
type span struct {
	first, last day
	year        int    // the year, or the first of the two
	kind        string // year, season or date
}

// parseSeason reads 2027, 2027-28 or 2027-03-14. A season over two years runs
// from 1 July to 30 June, the school year of the bodies that print it so.
func parseSeason(text string) (span, error) {
	parts := strings.Split(text, "-")
	numbers := make([]int, len(parts))
	for i, p := range parts {
		n, err := strconv.Atoi(p)
		if err != nil || strings.Trim(p, "0123456789") != "" || len(p) != []int{4, 2, 2}[min(i, 2)] {
			return span{}, badSeason(text)
		}
		numbers[i] = n
	}
	year := numbers[0]
	switch len(parts) {
	case 1:
		return span{on(year, 1, 1), on(year, 12, 31), year, "year"}, nil
	case 2:
		if numbers[1] != (year+1)%100 {
			return span{}, badSeason(text)
		}
		return span{on(year, 7, 1), on(year+1, 6, 30), year, "season"}, nil
	case 3:
		if _, err := time.Parse("2006-01-02", text); err != nil {
			return span{}, badSeason(text)
		}
		d := on(year, numbers[1], numbers[2])
		return span{d, d, year, "date"}, nil
	}
	return span{}, badSeason(text)
}

func badSeason(text string) error {
	return fmt.Errorf("%q is not a season: write a year 2027, a school year 2027-28 or a date 2027-03-14", text)
}

// dayOf returns the day on which a season is looked up. A date is itself; a
// season is the middle of the part of the year in which the sport is played.
func dayOf(season, played string) (day, error) {
	s, err := parseSeason(season)
	if err != nil {
		return 0, err
	}
	switch {
	case s.kind == "date":
		return s.first, nil
	case played == "autumn":
		return on(s.year, 9, 1), nil
	case played == "winter":
		return on(s.year, 12, 1), nil
	case played == "spring" && s.kind == "season":
		return on(s.year+1, 3, 1), nil
	case played == "spring":
		return on(s.year, 3, 1), nil
	}
	return on(s.year, 7, 1), nil
}
