package rigwarden.prove;

import rigwarden.warden.Scan;

/** One part of the check with nothing energised. */
sealed interface Stage permits AtRest, Fingers, Loops, Grounds {
    /** Looks at a scan, and at what the person says with it. */
    Turn take(Scan scan, Answer answer);
}
