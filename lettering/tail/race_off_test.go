//go:build !race

package tail_test

// dear is by how much fewer cases are tried; see race_on_test.go.
const dear = 1
