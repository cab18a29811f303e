package sheets

import (
	"fmt"

	"yokeline/lettering/sizes"
)

// compared reports a player who is signed already and stands among those who
// were added, to compare them with.
func (d *document) compared(p sizes.Player) bool { return d.in.Onto > 0 && p.Signed }

// added counts the players who are new to what is signed, and names one who is
// signed; empty when none stands among them.
func (d *document) added() (players int, with string) {
	for _, p := range d.in.Sized.Players {
		if !d.compared(p) {
			players++
		} else if with == "" {
			with = d.asCut(p)
		}
	}
	return players, with
}

// addedSentence says who was added to what is signed, and who stands beside them,
// in two lines of a page that stands upright.
func (d *document) addedSentence() string {
	added, with := d.added()
	text := "1 player joins"
	if added != 1 {
		text = fmt.Sprintf("%d players join", added)
	}
	text += fmt.Sprintf(" revision %d, which you signed", d.in.Onto)
	if with != "" {
		text += fmt.Sprintf("; %s is here to compare", with)
	}
	return text + ". " + d.readAloud()
}

// signedPlayers says who a signature is for: all players, or those who were added.
func (d *document) signedPlayers() string {
	players, thing := len(d.in.Sized.Players), "player"
	if d.in.Onto > 0 {
		players, _ = d.added()
		thing = "added player"
	}
	switch {
	case players == 1:
		return "the " + thing
	case d.in.Onto > 0:
		return "the " + plural(players, thing)
	}
	return "all " + plural(players, thing)
}
