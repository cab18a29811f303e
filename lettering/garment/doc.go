// Package garment knows the things that lettering is put on: the cuts and sizes
// of team garments, their finished measures, the shape each has when it lies
// flat, the panels on which decoration may lie, and where a piece is usually
// placed.
//
// Coordinates are millimetres with x = 0 on the centre line and growing to the
// viewer's right, y = 0 at the high point of shoulder (HPS, where the neck seam
// meets the shoulder seam) and growing down. Shorts have y = 0 at the top of the
// front waistband on the centre line. On the front the viewer's right is the
// wearer's left, on the back it is the wearer's right.
//
// The package decides geometry only: no colours and no line widths on paper.
//
// Every figure of the embedded table is generic and says what it rests on. None
// is a maker's; a maker's spec sheet takes its place through Custom. Placement
// conventions and clearances are common practice, no source, where nothing else
// is said.
package garment
