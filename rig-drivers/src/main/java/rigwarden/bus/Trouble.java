package rigwarden.bus;

import com.pi4j.library.linuxfs.LinuxFile.LinuxFileException;
import java.util.Optional;

/**
 * Why a transfer failed, from the kernel's error number and never from its words, which a machine's language changes
 * (numbers: Linux, asm-generic/errno.h; meanings: Documentation/i2c/fault-codes). The library hands the number on for a
 * select and for a combined transfer, and drops it for a plain write.
 */
public enum Trouble {
    NOT_ACKNOWLEDGED("no chip acknowledges there"),
    HELD_BY_KERNEL("a driver of the kernel's own holds that address: unbind it"),
    ARBITRATION_LOST("another master spoke on the bus"),
    BUS_STUCK("the bus hangs: a line is held low"),
    NODE_GONE("the bus is gone: its adapter was unplugged or its driver unloaded"),
    NOT_SUPPORTED("this adapter cannot do such a transfer"),
    WIRE_ERROR("the adapter reports an error on the wire"),
    UNNAMED("the library does not say why");

    private static final int ENXIO = 6;
    private static final int EIO = 5;
    private static final int EBADF = 9;
    private static final int EAGAIN = 11;
    private static final int EBUSY = 16;
    private static final int ENODEV = 19;
    private static final int EOPNOTSUPP = 95;
    private static final int ESHUTDOWN = 108;
    private static final int ETIMEDOUT = 110;
    private static final int EREMOTEIO = 121;

    private final String words;

    Trouble(String words) {
        this.words = words;
    }

    /** For a person beside the rig. */
    public String words() {
        return words;
    }

    /** What the exception that the library threw means. */
    static Trouble of(Throwable thrown) {
        for (Throwable cause = thrown; cause != null; cause = cause.getCause()) {
            Optional<Integer> errno = errno(cause);
            if (errno.isPresent()) {
                return of(errno.get());
            }
        }
        return UNNAMED;
    }

    private static Optional<Integer> errno(Throwable cause) {
        if (cause instanceof LinuxFileException official) {
            return Optional.of(official.getCode());
        }
        return cause instanceof WithErrno emulated ? Optional.of(emulated.errno()) : Optional.empty();
    }

    private static Trouble of(int errno) {
        return switch (errno) {
            case EREMOTEIO, ENXIO -> NOT_ACKNOWLEDGED;
            case EBUSY -> HELD_BY_KERNEL;
            case EAGAIN -> ARBITRATION_LOST;
            case ETIMEDOUT -> BUS_STUCK;
            case ENODEV, EBADF, ESHUTDOWN -> NODE_GONE;
            case EOPNOTSUPP -> NOT_SUPPORTED;
            case EIO -> WIRE_ERROR;
            default -> UNNAMED;
        };
    }
}
