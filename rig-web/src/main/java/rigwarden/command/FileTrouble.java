package rigwarden.command;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;

/** Why a file or folder that a person named cannot be used, in a sentence: the library often says its name only. */
final class FileTrouble {
    private FileTrouble() {}

    /** For example "/media/stick cannot be used: it is not there, and nothing can be made there." */
    static String words(FileSystemException thrown) {
        return thrown.getFile() + " cannot be used: " + why(thrown) + ".";
    }

    /** What stands behind "cannot be read" or "cannot be written". */
    static String why(IOException thrown) {
        return switch (thrown) {
            case NoSuchFileException _ -> "it is not there, and nothing can be made there";
            case AccessDeniedException _ -> "you may not";
            case FileAlreadyExistsException _ -> "something of that name is in the way";
            case NotDirectoryException _ -> "it is no folder";
            case FileSystemException file when file.getReason() != null -> file.getReason();
            case IOException other -> String.valueOf(other.getMessage());
        };
    }
}
