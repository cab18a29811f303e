package changes

import "yokeline/lettering/sizes"

// Match finds each player of a later order in an earlier one: the index there,
// or -1 for one who is new. Players are the same when everything that the roster
// says of them is; else when the full name or the name is, so that a new number
// or size is a change; else when the number is, so that a new spelling is one.
// Everyone is matched at most once.
func Match(was, is *sizes.Sized) []int {
	from := make([]int, len(is.Players))
	for i := range from {
		from[i] = -1
	}
	taken := make([]bool, len(was.Players))
	for _, by := range []func(sizes.Player) string{whole, fullName, name, number} {
		matchBy(by, was, is, from, taken)
	}
	return from
}

// matchBy matches those who are left by a key: where as many have it on both
// sides they are the same players in the same order, else it tells nothing.
func matchBy(by func(sizes.Player) string, was, is *sizes.Sized, from []int, taken []bool) {
	before, after := map[string][]int{}, map[string][]int{}
	for k, p := range was.Players {
		if key := by(p); key != "" && !taken[k] {
			before[key] = append(before[key], k)
		}
	}
	for i, p := range is.Players {
		if key := by(p); key != "" && from[i] < 0 {
			after[key] = append(after[key], i)
		}
	}
	for i, p := range is.Players {
		key := by(p)
		if from[i] >= 0 || key == "" || len(before[key]) != len(after[key]) {
			continue
		}
		if k := before[key][index(after[key], i)]; !taken[k] {
			from[i], taken[k] = k, true
		}
	}
}

func index(list []int, of int) int {
	for k, v := range list {
		if v == of {
			return k
		}
	}
	return 0
}

func whole(p sizes.Player) string {
	return p.FullName + "\x00" + p.Name + "\x00" + p.Number + "\x00" + p.Size.String() + "\x00" + p.Role
}

func fullName(p sizes.Player) string { return p.FullName }

func name(p sizes.Player) string { return p.Name }

func number(p sizes.Player) string { return p.Number }
