package rigwarden.kernel;

import java.nio.ByteBuffer;
import java.util.List;

/**
 * One {@code ioctl(2)} as far as it has come.
 *
 * @param command its number
 * @param argument its third argument, a value or an address of the caller
 * @param given what was asked for of the caller's memory, one behind the other
 * @param room bytes of the caller's memory that the answer fills
 */
record Ioctl(int command, long argument, ByteBuffer given, int room) {
    /** A stretch of the caller's memory. */
    record Span(long address, long length) {}

    /** What a device says to it. */
    sealed interface Answer {}

    /** These stretches are needed first: to read, and to fill. */
    record Wanted(List<Span> in, List<Span> out) implements Answer {}

    /** The result, and what fills the caller's memory. */
    record Done(int result, byte[] out) implements Answer {}

    /** An error number, positive. */
    record Refused(int errno) implements Answer {}
}
