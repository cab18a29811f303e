package sheets

// scales returns the ratios that a drawing may have, 1 to n, the largest
// drawing first.
func scales() []float64 {
	return []float64{2, 2.5, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 24}
}
