package main

import (
	"context"
	"errors"
	"fmt"
	"runtime/debug"

	"yokeline/lettering/source"
	"yokeline/proof/outfile"
)

// Exit codes. 2 is left to the Go runtime, which uses it for a crash that
// could not be caught.
const (
	exitDone     = 0
	exitFindings = 1  // done, and something does not fit or breaks a rule
	exitInput    = 3  // an order, a roster, a rule book or a font cannot be used
	exitUsage    = 4  // wrong flags or arguments
	exitOutput   = 5  // output could not be written; the old output is intact
	exitInternal = 70 // a fault of the program itself
	exitSignal   = 128
)

// errFindings ends a command that did its work and found something to put
// right. It prints nothing: the findings are the output.
var errFindings = errors.New("findings")

// usageError is a wrong flag or argument.
type usageError struct{ message string }

func (e usageError) Error() string { return e.message }

func usagef(format string, args ...any) error { return usageError{fmt.Sprintf(format, args...)} }

// run executes one command line and returns its exit code. A panic anywhere
// below is reported as a fault of the program, with the trace, and never
// leaves half an output behind (files are renamed into place at the end).
func run(ctx context.Context, args []string, s streams) (code int) {
	defer func() {
		if cause := recover(); cause != nil {
			fmt.Fprintf(s.err, "yokeline: internal error: %v\n%s\nPlease report this with the order that caused it.\n", cause, debug.Stack())
			code = exitInternal
		}
	}()
	command := newRoot(s)
	command.SetArgs(args)
	err := command.ExecuteContext(ctx)
	if err == nil {
		return exitDone
	}
	return s.report(err)
}

// report prints an error for a person and returns the exit code it stands for.
func (s streams) report(err error) int {
	var faults source.Faults
	var usage usageError
	var output *outfile.Error
	switch {
	case errors.Is(err, errFindings):
		return exitFindings
	case errors.Is(err, context.Canceled):
		fmt.Fprintln(s.err, "yokeline: stopped; nothing was written")
		return exitInternal // replaced by 128 + the signal in runProcess
	case errors.As(err, &faults):
		for _, fault := range faults {
			fmt.Fprintln(s.err, fault.Text())
		}
		fmt.Fprintf(s.err, "yokeline: %s\n", countOf(len(faults), "fault", "nothing was written"))
		return exitInput
	case errors.As(err, &output):
		fmt.Fprintf(s.err, "yokeline: %v\n", err)
		return exitOutput
	case errors.As(err, &usage):
		fmt.Fprintf(s.err, "yokeline: %v\n", err)
		return exitUsage
	}
	fmt.Fprintf(s.err, "yokeline: %v\n", err)
	return exitInput
}

func countOf(n int, noun, rest string) string {
	if n != 1 {
		noun += "s"
	}
	return fmt.Sprintf("%d %s; %s", n, noun, rest)
}
