//go:build race

package tail_test

// dear is by how much fewer cases are tried: the race detector makes arithmetic
// eight times slower, and there is only one goroutine to watch here.
const dear = 6
