package order

import (
	"slices"

	"yokeline/lettering/garment"
)

// Sports returns the sports a job may name: those with usual number heights
// first, "other" last.
func Sports() []string {
	return append(garment.Sports(),
		"ice hockey", "field hockey", "handball", "floorball", "rugby", "cricket", "netball", "ultimate", "roller derby", "track", "futsal", "water polo", "other")
}

// otherSports are further words for the sports of Sports, each with the one it
// is read as. Which variety is played is for the rule book to say; usual heights
// do not differ by it.
func otherSports() [][2]string {
	return [][2]string{
		{"association football", "soccer"}, {"futbol", "soccer"}, {"fútbol", "soccer"}, {"football (soccer)", "soccer"}, {"indoor soccer", "soccer"},
		{"american football", "football"}, {"gridiron", "football"}, {"gridiron football", "football"}, {"tackle football", "football"}, {"flag football", "football"},
		{"fastpitch", "softball"}, {"fastpitch softball", "softball"}, {"slow pitch", "softball"}, {"slow pitch softball", "softball"}, {"slo-pitch", "softball"},
		{"hardball", "baseball"}, {"tee ball", "baseball"}, {"t-ball", "baseball"},
		{"boys lacrosse", "lacrosse"}, {"girls lacrosse", "lacrosse"}, {"men's lacrosse", "lacrosse"}, {"women's lacrosse", "lacrosse"}, {"box lacrosse", "lacrosse"},
		{"indoor volleyball", "volleyball"}, {"beach volleyball", "volleyball"}, {"sitting volleyball", "volleyball"}, {"women's volleyball", "volleyball"},
		{"women's basketball", "basketball"}, {"men's basketball", "basketball"},
		{"roller hockey", "hockey"}, {"inline hockey", "hockey"}, {"ball hockey", "hockey"}, {"street hockey", "hockey"},
		{"grass hockey", "field hockey"}, {"team handball", "handball"}, {"beach handball", "handball"}, {"unihockey", "floorball"}, {"floor hockey", "floorball"},
		{"rugby union", "rugby"}, {"rugby league", "rugby"}, {"rugby sevens", "rugby"}, {"touch rugby", "rugby"},
		{"disc ultimate", "ultimate"}, {"ultimate disc", "ultimate"},
		{"athletics", "track"}, {"track and field", "track"}, {"cross country", "track"},
		{"indoor football (futsal)", "futsal"}, {"waterpolo", "water polo"}, {"derby", "roller derby"},
	}
}

// readSport reads the sport by any of its words, whatever its case and hyphens.
func (d *draft) readSport(v value) {
	s, ok := v.scalar()
	if !ok {
		d.badSport = true
		return
	}
	sports := Sports()
	if i := slices.IndexFunc(sports, func(known string) bool { return squeeze(known) == squeeze(s) }); i >= 0 {
		d.o.Sport = sports[i]
		return
	}
	words := slices.Clone(sports)
	for _, other := range otherSports() {
		if squeeze(other[0]) == squeeze(s) {
			d.o.Sport = other[1]
			return
		}
		words = append(words, other[0])
	}
	d.badSport = true
	hint := "use " + list(sports)
	if k := near(s, words); k != "" {
		hint = didYouMean(k)
	}
	v.fault(hint, "%s: %q is not a sport", v.name, s)
}
