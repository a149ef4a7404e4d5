package rigwarden.marks;

import java.lang.annotation.ElementType;
import java.lang.annotation.Repeatable;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** On a test: what it checks, and what the expected values stand on. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
@Repeatable(Marks.class)
public @interface Mark {
    /** What is checked: the word of a finding, or a part of the numerical kit. */
    String of();

    Standing standing();

    /** Document and place; of a worked value how it was worked. */
    String source();
}
