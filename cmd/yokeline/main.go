// Command yokeline sizes lettering and numbers for team uniforms, checks them
// against the league's rule book and draws the proof that a coach signs.
//
// Each subcommand has a file of its own that reads flags, calls and prints;
// nothing is computed here. Results go to standard output, all else (progress,
// messages, findings of a proof) to standard error.
package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"
)

func main() {
	os.Exit(runProcess())
}

// runProcess connects the program to the process it runs in: streams,
// environment and signals. It is apart from main so that tests can run the
// very same program in process.
func runProcess() int {
	ctx, caught := interruptible()
	code := run(ctx, os.Args[1:], processStreams())
	if sig, ok := caught(); ok {
		return exitSignal + int(sig)
	}
	return code
}

// interruptible returns a context that ends at SIGINT or SIGTERM and a
// function that tells which one came.
func interruptible() (context.Context, func() (syscall.Signal, bool)) {
	ctx, cancel := context.WithCancel(context.Background())
	signals, seen := make(chan os.Signal, 1), make(chan syscall.Signal, 1)
	signal.Notify(signals, syscall.SIGINT, syscall.SIGTERM)
	go func() {
		sig := (<-signals).(syscall.Signal)
		seen <- sig
		cancel()
	}()
	return ctx, func() (syscall.Signal, bool) {
		select {
		case sig := <-seen:
			return sig, true
		default:
			return 0, false
		}
	}
}
