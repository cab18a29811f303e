package order

import (
	"fmt"
	"strings"

	"go.yaml.in/yaml/v4"

	"yokeline/lettering/garment"
)

// inline reads players that the job lists itself.
func (d *draft) inline(v value) {
	if v.node.Kind != yaml.SequenceNode {
		v.fault("start each player with a hyphen: - {name: Lind, number: 7, size: M}", "players must be a list")
		return
	}
	if len(v.node.Content) == 0 {
		v.fault("list them, or name a roster file with roster:", "players: there are none")
	}
	for i, n := range v.node.Content {
		item := value{r: v.r, node: n, name: fmt.Sprintf("player %d", i+1)}
		if n.Kind != yaml.MappingNode {
			item.fault("such as {name: Lind, number: 7, size: M}", "a player must be a list of keys and values")
			continue
		}
		d.players = append(d.players, d.player(item))
	}
}

// player reads one player into the same cells a roster file gives. A number is
// taken as it was typed, quoted or not.
func (d *draft) player(v value) entry {
	e := entry{row: v.place()}
	var table []field
	for _, k := range []struct {
		key string
		to  heading
	}{
		{"name", headBack}, {"player", headPlayer}, {"number", headNumber}, {"size", headSize},
		{"group", headGroup}, {"role", headRole}, {"captain", headCaptain}, {"note", headNote},
	} {
		table = append(table, field{key: k.key, read: func(x value) {
			if x.node.Kind == yaml.ScalarNode && x.empty() {
				return // as an empty cell of a roster: noted, not refused
			}
			text, ok := x.scalar()
			if n := len([]rune(text)); n > cellLetters {
				x.fault("shorten it", "%s has %d characters: at most %d are read", x.name, n, cellLetters)
			} else if ok {
				e.cells[k.to] = cell{text: strings.TrimSuffix(text, "\n"), at: x.place(), width: v.r.nodeWidth(x.node)}
			}
		}})
	}
	v.fields("{name: Lind, number: 7, size: M}", table)
	return e
}

// settlePlayers builds the players once the garment's group and the pieces are
// known.
func (d *draft) settlePlayers() {
	t := newTeam(d.o.rosterOptions(), naming{back: headBack, full: headPlayer}, func(c cell) string { return d.file.Line(c.at.Line) })
	for i := range d.players {
		t.add(&d.players[i])
	}
	d.faults = append(d.faults, t.faults...)
	d.o.Players = t.players
	d.o.Notes = t.notes
}

// rosterOptions say what the pieces need of each player.
func (o *Order) rosterOptions() RosterOptions {
	opts := RosterOptions{Group: o.Garment.Group, NoNames: true, NoNumbers: true}
	for _, p := range o.Pieces {
		switch {
		case IsNumber(p.Place):
			opts.NoNumbers = false
		case p.Place == garment.BackName:
			opts.NoNames = false
		}
	}
	return opts
}
