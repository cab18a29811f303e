// Package tail draws the tail of a script team name: a swash that grows out of
// the foot of the last letter, turns, and sweeps back under the name, with room
// for a small text in it. Lengths are mm, y grows upward, the baseline is at
// y = 0.
//
// A tail is drawn by its curvature. Its centre line carries on the stroke of
// the last letter in the direction which that stroke has there, and its
// curvature nowhere jumps; its thickness starts with that of the stroke and
// swells and thins with it. Both are our own construction.
package tail

import (
	"errors"
	"fmt"
	"math"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
)

// Tail is a drawn tail.
type Tail struct {
	Joined geom.Region // script and tail as one settled shape
	Alone  geom.Region // the tail by itself, settled, its root inside the last letter
	Edge   geom.Path   // the tail's outline as curves, anticlockwise, root included
	Axis   geom.Path   // its centre line as curves, from the root
	Bounds geom.Rect   // box of Joined; a tail reaches past the script's right end and below it
	Gap    float64     // the least distance, mm, between the tail's way back and the letters
	Foot   geom.Point  // where the tail leaves the outer edge of the last letter
	Spot   TextSpot    // where a small text has room
}

// tolerance is how far, in mm, the flattened tail may be from its curves.
const tolerance = outline.Tolerance / 2

// Draw draws a tail under a script of the given letter height (mm) and joins
// the two. The script's ink must stand on y = 0. The tail shares the contour of
// the last letter, touches no other and closes no new counter; it goes as low
// as the gap asks for. Errors: *RoomError where there is no room for the tail
// as asked, with a figure that would do; ErrFoot; others for parameters that
// make no sense or ink that cannot be settled.
func Draw(ink geom.Region, letterHeight float64, p Params) (Tail, error) {
	settled, err := outline.Union(ink)
	if err != nil {
		return Tail{}, err
	}
	if len(settled) == 0 {
		return Tail{}, errors.New("there is no script to draw a tail under")
	}
	s, err := p.in(letterHeight, settled)
	if err != nil {
		return Tail{}, err
	}
	found, err := roots(settled, s)
	if err != nil {
		return Tail{}, err
	}
	t, err := draw(settled, found, s)
	if errors.Is(err, errRoom) {
		return Tail{}, remedy(settled, found, s)
	}
	return t, err
}

// draw draws the tail from the first root that has room for it.
func draw(ink geom.Region, found []root, s sized) (Tail, error) {
	for _, r := range found {
		field := newField(ink, r, s)
		sh, ok := field.solve()
		if !ok {
			continue
		}
		t, err := join(ink, &sh)
		if err != nil {
			return Tail{}, err
		}
		if !sameRings(ink, t.Joined) {
			continue
		}
		t.Gap, _ = field.clearance(&sh, math.Inf(1))
		t.Foot = r.edge
		return t, nil
	}
	return Tail{}, errRoom
}

func join(ink geom.Region, sh *shape) (Tail, error) {
	t := Tail{Edge: sh.outline(), Axis: sh.axis(), Spot: sh.spot()}
	var e outline.Engine
	var err error
	if t.Alone, err = e.Union(t.Edge.Flatten(tolerance)); err != nil {
		return Tail{}, fmt.Errorf("tail: %w", err)
	}
	both := append(append(make(geom.Region, 0, len(ink)+len(t.Alone)), ink...), t.Alone...)
	if t.Joined, err = e.Union(both); err != nil {
		return Tail{}, fmt.Errorf("tail: %w", err)
	}
	t.Bounds = t.Joined.Bounds()
	return t, nil
}

// sameRings reports whether both have as many contours and as many counters.
func sameRings(a, b geom.Region) bool { return contours(a) == contours(b) && len(a) == len(b) }

func contours(r geom.Region) int {
	n := 0
	for _, ring := range r {
		if ring.Area() > 0 {
			n++
		}
	}
	return n
}

// meanStroke returns the thickness of a long even stroke with the area and the
// edge of the ink.
func meanStroke(ink geom.Region) float64 { return 2 * math.Abs(ink.Area()) / ink.Perimeter() }
