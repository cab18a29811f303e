package tail

import (
	"errors"
	"fmt"
	"math"

	"yokeline/lettering/geom"
)

// errRoom: there is no room for the tail; remedy finds out what would do.
var errRoom = errors.New("no room for the tail")

// RoomError says that there is no room for a tail as asked under its name, and
// which change of one parameter, tried by drawing it, makes room.
type RoomError struct {
	Remedy         string  // "length", "thickness", "gap", or empty where none of them alone does
	Asked, WouldDo float64 // of that parameter, mm
}

// Error says what would do.
func (e *RoomError) Error() string {
	if e.Remedy == "" {
		return "there is no room for the tail under this name; draw it longer, thinner and with less curl, or leave it out"
	}
	return fmt.Sprintf("there is no room for the tail under this name with a %s of %.2f mm; %.2f mm would do", e.Remedy, e.Asked, e.WouldDo)
}

// remedy looks for the nearest length, thickness or gap that has room, in this
// order.
func remedy(ink geom.Region, found []root, s sized) error {
	longer, thinner, closer := s, s, s
	for _, way := range []struct {
		name   string
		s      *sized
		value  *float64
		factor float64
		last   float64
	}{
		{"length", &longer, &longer.reach, 1.12, 6 * (s.height + s.reach)},
		{"thickness", &thinner, &thinner.thickness, 0.8, thinnest * s.height},
		{"gap", &closer, &closer.gap, 0.7, closest * s.height},
	} {
		asked := *way.value
		for v := asked * way.factor; (v-way.last)*(way.factor-1) < 0; v *= way.factor {
			*way.value = rounded(v, way.factor)
			if _, err := draw(ink, found, *way.s); err == nil {
				return &RoomError{way.name, asked, *way.value}
			}
		}
	}
	return &RoomError{}
}

// rounded returns v as it is printed, rounded away from what was asked, so that
// the printed figure is the one that was tried.
func rounded(v, factor float64) float64 {
	if factor > 1 {
		return math.Ceil(v*100) / 100
	}
	return math.Floor(v*100) / 100
}
