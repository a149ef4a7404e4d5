package rigwarden.emulated;

import java.io.IOException;
import rigwarden.bus.WithErrno;

/** What the linuxfs plugin throws for a failed ioctl: the words, and the number beside them. */
final class NumberedException extends IOException implements WithErrno {
    private static final long serialVersionUID = 1L;

    private final int errno;

    NumberedException(Errno errno) {
        super(errno.words());
        this.errno = errno.number();
    }

    @Override
    public int errno() {
        return errno;
    }
}
