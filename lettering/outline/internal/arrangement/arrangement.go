// Package arrangement turns closed polygons on an integer grid into the
// boundary of the area they fill. It cuts all edges at their crossings, finds
// the winding number of every face, and traces the edges between filled and
// empty faces. Every decision is an exact integer predicate, so equal input
// gives equal output and no input can lead the tracing astray.
//
// Crossings are rounded to the grid, and an edge that passes through the pixel
// of a vertex is led through that vertex. Both kinds of cut happen at a point p
// of an edge ab with (p-a)·(b-p) >= 0, hence |ap|² + |pb|² <= |ab|²: the sum of
// squared edge lengths, an integer, never grows. Where it stays equal the
// number of edges grows, which the sum bounds. So cutting always ends.
package arrangement

import "errors"

// Limit bounds the coordinates: every |X| and |Y| must be at most Limit, so
// that no predicate overflows 64 bits.
const Limit = 1 << 28

// maxRounds stops a runaway loop. Cutting is proved to end, yet only after a
// number of rounds that nobody would wait for; lettering needs 2 to 6.
const maxRounds = 400

// Errors of the engine.
var (
	ErrRange     = errors.New("coordinate outside the grid: keep shapes within 32 m of the origin")
	ErrUnsettled = errors.New("crossings do not settle on the grid: simplify the shape")
)

// Point is a vertex of the grid.
type Point struct{ X, Y int32 }

func (p Point) before(q Point) bool { return p.X < q.X || p.X == q.X && p.Y < q.Y }

func (p Point) compare(q Point) int {
	switch {
	case p == q:
		return 0
	case p.before(q):
		return -1
	}
	return 1
}

// Engine holds the scratch memory of one arrangement at a time. The zero value
// is ready. It must not be used by two goroutines at once.
type Engine struct {
	edges, spare []edge
	cuts         []cut
	old, fresh   []span
	spokes       []spoke
	slot         []int32 // half edge -> its place in spokes
	hub          []int32 // half edge -> number of its origin vertex
	first        []int32 // vertex -> its first spoke; one more than vertices
	left         []int32 // half edge -> winding number of the face on its left
	border, done []bool  // half edge -> filled on the left only; already traced
	rounds       int
}

// Fill says whether a face with the given winding number belongs to the area.
type Fill func(winding int32) bool

// NonZero fills every face that some contour goes round.
func NonZero(winding int32) bool { return winding != 0 }

// Positive fills faces that more contours go round anticlockwise than
// clockwise.
func Positive(winding int32) bool { return winding > 0 }

// Negative fills faces that more contours go round clockwise than
// anticlockwise.
func Negative(winding int32) bool { return winding < 0 }

// Reset forgets the rings added so far and keeps the memory.
func (e *Engine) Reset() { e.edges = e.edges[:0] }

// Add adds a closed ring; its last point joins its first. It returns ErrRange,
// having added nothing, when a point lies outside the grid.
func (e *Engine) Add(ring []Point) error {
	for _, p := range ring {
		if p.X > Limit || p.X < -Limit || p.Y > Limit || p.Y < -Limit {
			return ErrRange
		}
	}
	if len(ring) < 3 {
		return nil
	}
	prev := ring[len(ring)-1]
	for _, p := range ring {
		e.edges = appendEdge(e.edges, prev, p, 1)
		prev = p
	}
	return nil
}

// Trace returns the boundary of the filled area: interior on the left of every
// edge, so outer rings run anticlockwise and holes clockwise, with no crossing
// and no straight vertex. Areas that meet in a point only are separate rings.
// Each ring starts at its least point and rings are ordered by it. Call Reset
// before the rings of the next arrangement. It returns ErrUnsettled when the cutting does not end.
func (e *Engine) Trace(fill Fill) ([][]Point, error) {
	if err := e.cutAll(); err != nil {
		return nil, err
	}
	if len(e.edges) == 0 {
		return nil, nil
	}
	e.link()
	e.wind()
	return e.trace(fill), nil
}

// Rounds returns how many rounds of cutting the last Trace needed.
func (e *Engine) Rounds() int { return e.rounds }
