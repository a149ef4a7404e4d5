package rigwarden.bus;

import java.lang.foreign.AddressLayout;
import java.lang.foreign.Arena;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.ValueLayout;
import java.lang.invoke.MethodHandle;
import java.nio.file.Path;
import rigwarden.warden.Failure;

/**
 * This process' claim to a bus. A device node itself may be opened by any number of processes, and two on one bus take
 * each other's answers. The claim is {@code flock(2)}: it ends with the process, however that ends. Java's own file locks
 * will not do, since the kernel drops those with the first descriptor that anybody in the process closes.
 */
final class NodeLock implements AutoCloseable {
    private static final ValueLayout.OfInt INT = ValueLayout.JAVA_INT;
    private static final AddressLayout TEXT = ValueLayout.ADDRESS;
    private static final int READ_WRITE = 2;
    private static final int CLOSE_ON_EXEC = 0x80000;
    private static final int EXCLUSIVE_AT_ONCE = 2 | 4;
    private static final Linker LINKER = Linker.nativeLinker();
    private static final MethodHandle OPEN = function("open",
            FunctionDescriptor.of(INT, TEXT, INT), Linker.Option.firstVariadicArg(2));
    private static final MethodHandle FLOCK = function("flock", FunctionDescriptor.of(INT, INT, INT));
    private static final MethodHandle CLOSE = function("close", FunctionDescriptor.of(INT, INT));

    private final int descriptor;

    private NodeLock(int descriptor) {
        this.descriptor = descriptor;
    }

    /**
     * Claims a node, or fails at once.
     *
     * @throws BusFailure when the node cannot be opened, or another process has it
     */
    static NodeLock of(Path node) throws BusFailure {
        int descriptor = opened(node);
        if (descriptor < 0) {
            throw new BusFailure(Failure.NO_ANSWER, node + " cannot be opened for reading and writing");
        }
        NodeLock lock = new NodeLock(descriptor);
        if (call(FLOCK, descriptor, EXCLUSIVE_AT_ONCE) != 0) {
            lock.close();
            throw new BusFailure(Failure.NO_ANSWER, node + " is in use by another process, and two on one bus take each"
                    + " other's answers: end the other one first");
        }
        return lock;
    }

    @Override
    public void close() {
        call(CLOSE, descriptor);
    }

    private static int opened(Path node) {
        try (Arena arena = Arena.ofConfined()) {
            return call(OPEN, arena.allocateFrom(node.toString()), READ_WRITE | CLOSE_ON_EXEC);
        }
    }

    private static MethodHandle function(String name, FunctionDescriptor shape, Linker.Option... options) {
        MemorySegment address = LINKER.defaultLookup().findOrThrow(name);
        return LINKER.downcallHandle(address, shape, options);
    }

    private static int call(MethodHandle function, Object... arguments) {
        try {
            return (int) function.invokeWithArguments(arguments);
        } catch (Throwable e) {
            throw new IllegalStateException("libc", e);
        }
    }
}
