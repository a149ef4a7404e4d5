package rigwarden.emulated;

/** Errors of the kernel that an emulated bus can give (Linux, asm-generic/errno.h; words of glibc in English). */
enum Errno {
    BUSY(16, "Device or resource busy"),
    REMOTE_IO(121, "Remote I/O error");

    private final int number;
    private final String words;

    Errno(int number, String words) {
        this.number = number;
        this.words = words;
    }

    int number() {
        return number;
    }

    String words() {
        return words;
    }
}
