//go:build unix

package files

import (
	"errors"
	"io/fs"
	"os"
	"os/signal"
	"syscall"

	"millside/counter/disk"
)

// alive says whether there is a process of that number.
func alive(pid int) bool { return !errors.Is(syscall.Kill(pid, 0), syscall.ESRCH) }

// likeOld gives a new file the permissions of the one that it replaces, and its owner where that may be done.
func likeOld(file disk.File, old fs.FileInfo) error {
	owned, can := file.(interface{ Chown(uid, gid int) error })
	if st, ok := old.Sys().(*syscall.Stat_t); ok && can {
		_ = owned.Chown(int(st.Uid), int(st.Gid)) // only the system's keeper may give files away
	}
	return file.Chmod(old.Mode().Perm())
}

// removeOnSignal takes a file away if the program is ended by a signal.
func removeOnSignal(fsys disk.FS, name string) (stop func()) {
	signals, done := make(chan os.Signal, 1), make(chan struct{})
	signal.Notify(signals, syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP, syscall.SIGQUIT)
	go func() {
		select {
		case s := <-signals:
			_ = fsys.Remove(name)
			signal.Reset(s)
			_ = syscall.Kill(os.Getpid(), s.(syscall.Signal))
		case <-done:
		}
	}()
	return func() { signal.Stop(signals); close(done) }
}
