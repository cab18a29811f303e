package sheetplan

import "yokeline/lettering/geom"

// freeRooms empties the rooms for labels that something of another part lies in:
// parts that lie in each other share their margins.
func freeRooms(parts []Placed) {
	for i := range parts {
		for k, room := range parts[i].Art.Waste {
			for j := range parts {
				if i != j && !room.Empty() && touches(parts[j], room) {
					room = geom.EmptyRect()
				}
			}
			parts[i].Art.Waste[k] = room
		}
	}
}

// touches reports whether an edge of a part's layers crosses a room, or the room
// lies inside one of them.
func touches(p Placed, room geom.Rect) bool {
	if box := p.Art.Box; box.Max.X < room.Min.X || box.Min.X > room.Max.X || box.Max.Y < room.Min.Y || box.Min.Y > room.Max.Y {
		return false
	}
	for _, l := range p.Art.Layers {
		for _, ring := range l.Region {
			for n, a := range ring {
				if crosses(a, ring[(n+1)%len(ring)], room) {
					return true
				}
			}
		}
		if l.Region.Contains(room.Center()) {
			return true
		}
	}
	return false
}

// crosses reports whether a straight edge has a point in a box: the part of the
// edge that is left after it is cut at each side is not empty.
func crosses(a, b geom.Point, box geom.Rect) bool {
	from, to := 0.0, 1.0
	d := b.Sub(a)
	for _, side := range [4][2]float64{{-d.X, a.X - box.Min.X}, {d.X, box.Max.X - a.X}, {-d.Y, a.Y - box.Min.Y}, {d.Y, box.Max.Y - a.Y}} {
		rate, room := side[0], side[1]
		switch {
		case rate == 0 && room < 0:
			return false
		case rate < 0:
			from = max(from, room/rate)
		case rate > 0:
			to = min(to, room/rate)
		}
	}
	return from <= to
}
