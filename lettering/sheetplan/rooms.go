package sheetplan

import (
	"math"

	"yokeline/lettering/geom"
)

// labelDeep is the depth, mm, from which a room takes a label that is read with
// ease.
const labelDeep = 2.7

// keepRooms keeps the rooms for labels within the margins of the sheet: parts that
// lie by their outlines reach up to them. A part that has no other room for its
// label has it in the margin, but never off the sheet.
func keepRooms(parts []Placed, within, sheet geom.Rect) {
	for i := range parts {
		rooms := clipped(parts[i].Art.Waste, within)
		deepest := 0.0
		for _, room := range rooms {
			deepest = math.Max(deepest, math.Min(room.Width(), room.Height()))
		}
		if deepest < labelDeep {
			rooms = clipped(parts[i].Art.Waste, sheet)
		}
		parts[i].Art.Waste = rooms
	}
}

func clipped(rooms [4]geom.Rect, to geom.Rect) [4]geom.Rect {
	for k, room := range rooms {
		room.Min = geom.Point{X: math.Max(room.Min.X, to.Min.X), Y: math.Max(room.Min.Y, to.Min.Y)}
		room.Max = geom.Point{X: math.Min(room.Max.X, to.Max.X), Y: math.Min(room.Max.Y, to.Max.Y)}
		if rooms[k] = room; room.Empty() {
			rooms[k] = geom.EmptyRect()
		}
	}
	return rooms
}

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
