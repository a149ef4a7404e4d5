package rigwarden.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import rigwarden.findings.Answer;
import rigwarden.findings.Budget;
import rigwarden.findings.Finding;
import rigwarden.findings.Kind;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/** What a person reads of a run that gave no capacity. */
class FindingsTextTest {
    private static final Rig RIG = ((Read.Sound<Rig>) RigFile.read(Path.of("..", "hardware", "rigs", "one-cell.toml"))).value();

    private static Finding finding(Kind kind, String about, Answer answer) {
        return new Finding(kind, about, answer, List.of(), List.of(), 1, 100);
    }

    private static Finding charge(int step, double ampHours) {
        return finding(Kind.CHARGE, "step " + step + ", charge", new Answer.Value(ampHours, "Ah", new Budget(List.of(Budget.limits("shunt tolerance", 0.1)))));
    }

    private static String said(Finding... findings) {
        return String.join("\n", FindingsText.of(1, new RunFindings(RIG, Optional.empty(), false, List.of(new RunFindings.Part(1, 0, OptionalInt.empty())),
                Optional.empty(), 100, 0, List.of(), List.of(findings)), OptionalInt.empty()));
    }

    @Test
    void the_charge_of_a_run_without_a_capacity_is_that_of_all_steps_only_where_each_can_be_told() {
        Finding none = finding(Kind.CAPACITY, "the run", new Answer.Refused("there was no discharge that ended"));
        Finding untold = finding(Kind.CHARGE, "step 3, charge", new Answer.Refused("the rows' time went back within the step"));

        assertThat(said(none, charge(1, 5), charge(2, -2.5)))
                .contains("No capacity: there was no discharge that ended. In all steps 5.000 Ah went in and 2.500 Ah came out.");
        assertThat(said(none, charge(1, 5), untold)).contains("In the steps whose charge can be told 5.000 Ah went in and 0.000 Ah came out.");
        assertThat(said(none, untold)).contains("there was no discharge that ended, and no charge can be told.");
    }
}
