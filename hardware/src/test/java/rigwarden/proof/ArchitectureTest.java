package rigwarden.proof;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import org.junit.jupiter.api.Test;
import rigwarden.loop.planted.PlantedWall;
import rigwarden.warden.planted.PlantedThread;

/** The arrows of the house, and a planted violation that shows that this test can fail. */
class ArchitectureTest {
    /** Everything but tests, read once: it takes as long as all rules together. */
    private static final JavaClasses PRODUCT = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("rigwarden");

    private static final ArchRule PURE = noClasses()
            .that()
            .resideInAnyPackage("rigwarden.warden..", "rigwarden.run..", "rigwarden.prove..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.sql..", "java.util.concurrent..", "java.io..", "java.nio..", "java.time..",
                    "rigwarden.loop..", "rigwarden.logbook..", "rigwarden.findings..", "rigwarden.pack..",
                    "rigwarden.rigfile..")
            .orShould()
            .dependOnClassesThat()
            .areAssignableTo(Thread.class)
            .orShould()
            .callMethod(System.class, "nanoTime")
            .orShould()
            .callMethod(System.class, "currentTimeMillis");

    /** The clock on the wall may be set by an hour in the middle of a run. */
    private static final ArchRule NOTHING_GOES_BY_THE_WALL = noClasses()
            .that()
            .resideInAnyPackage("rigwarden.loop..", "rigwarden.bench..", "rigwarden.bus..", "rigwarden.chip..", "rigwarden.serial..", "rigwarden.panel..",
                    "rigwarden.pack..", "rigwarden.emulated..", "rigwarden.program..", "rigwarden.findings..")
            .or()
            .haveSimpleName("LiveRun")
            .or()
            .haveSimpleName("ControlThread")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("java.time..")
            .orShould()
            .callMethod(System.class, "currentTimeMillis");

    private static final ArchRule NO_WORLD_IN_DRIVERS = noClasses()
            .that()
            .resideInAnyPackage("rigwarden.bus..", "rigwarden.chip..", "rigwarden.serial..", "rigwarden.panel..",
                    "rigwarden.bench..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("rigwarden.pack..", "rigwarden.emulated..");

    private static final ArchRule NO_DRIVER_IN_EMULATORS = noClasses()
            .that()
            .haveSimpleNameEndingWith("Emulator")
            .or()
            .haveSimpleName("ScpiInstrument")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("rigwarden.chip..", "rigwarden.serial..", "rigwarden.bench..");

    private static final ArchRule PACK_KNOWS_NOTHING = noClasses()
            .that()
            .resideInAPackage("rigwarden.pack..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("rigwarden.rig..", "rigwarden.warden..", "rigwarden.run..", "rigwarden.loop..");

    private static final ArchRule NO_CHIP_BEHIND_THE_PAGE = noClasses()
            .that()
            .resideInAnyPackage("rigwarden.page..", "rigwarden.live..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("rigwarden.bus..", "rigwarden.chip..", "rigwarden.serial..", "rigwarden.panel..",
                    "rigwarden.bench..", "rigwarden.emulated..", "rigwarden.pack..", "rigwarden.command..", "com.pi4j..");

    private static final ArchRule NO_PAGE_BELOW_THE_PAGE = noClasses()
            .that()
            .resideOutsideOfPackages("rigwarden.page..", "rigwarden.live..", "rigwarden.notice..", "rigwarden.command..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("rigwarden.page..", "rigwarden.live..");

    /** Notices look as a viewer does: they can ask for nothing, and nothing on the control thread knows that they are there. */
    private static final ArchRule NOTICES_ONLY_LOOK = noClasses()
            .that()
            .resideInAPackage("rigwarden.notice..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("rigwarden.page..", "rigwarden.command..", "rigwarden.loop..", "rigwarden.bench..",
                    "rigwarden.logbook..", "java.sql..")
            .orShould()
            .dependOnClassesThat()
            .haveSimpleName("Desk")
            .orShould()
            .dependOnClassesThat()
            .haveSimpleName("Inbox");

    private static final ArchRule NOBODY_WAITS_FOR_NOTICES = noClasses()
            .that()
            .resideOutsideOfPackages("rigwarden.notice..", "rigwarden.command..")
            .or()
            .haveSimpleName("LiveRun")
            .or()
            .haveSimpleName("ControlThread")
            .or()
            .haveSimpleName("Ending")
            .or()
            .haveSimpleName("Attendance")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("rigwarden.notice..");

    /** Who draws and judges faults knows the rehearsal and the core, no chip, no driver, no page. */
    private static final ArchRule CAMPAIGN_STANDS_ON_REHEARSALS = noClasses()
            .that()
            .resideInAPackage("rigwarden.campaign..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("rigwarden.chip..", "rigwarden.serial..", "rigwarden.panel..", "rigwarden.bench..",
                    "rigwarden.logbook..", "rigwarden.findings..", "rigwarden.page..", "rigwarden.live..", "rigwarden.command..",
                    "com.pi4j..");

    private static final ArchRule ONLY_COMMANDS_KNOW_THE_CAMPAIGN = noClasses()
            .that()
            .resideOutsideOfPackages("rigwarden.campaign..", "rigwarden.command..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("rigwarden.campaign..");

    /** The judge knows what is true, what is rated and what is ordered, and no rule and no limit of the warden. */
    private static final ArchRule THE_JUDGE_KNOWS_NO_RULE = noClasses()
            .that()
            .haveFullyQualifiedName("rigwarden.campaign.Judge")
            .or()
            .haveFullyQualifiedName("rigwarden.campaign.Load")
            .should()
            .dependOnClassesThat()
            .haveNameMatching("rigwarden\\.warden\\.(?!Orders).*|rigwarden\\.rig\\.Envelope|rigwarden\\.run\\..*");


    @Test
    void the_core_points_one_way() {
        assertThat(PRODUCT.size()).as("classes seen at all").isGreaterThan(150);

        layeredArchitecture()
                .consideringOnlyDependenciesInLayers()
                .layer("quantity").definedBy("rigwarden.quantity..")
                .layer("rig").definedBy("rigwarden.rig..")
                .layer("program").definedBy("rigwarden.program..")
                .layer("warden").definedBy("rigwarden.warden..")
                .layer("run").definedBy("rigwarden.run..")
                .layer("loop").definedBy("rigwarden.loop..")
                .layer("logbook").definedBy("rigwarden.logbook..")
                .layer("prove").definedBy("rigwarden.prove..")
                .layer("findings").definedBy("rigwarden.findings..")
                .layer("rigfile").definedBy("rigwarden.rigfile..")
                .layer("calibration").definedBy("rigwarden.calibration..")
                .layer("joint").definedBy("rigwarden.joint..")
                .layer("elsewhere").definedBy("rigwarden.elsewhere..")
                .whereLayer("calibration").mayOnlyAccessLayers("quantity", "rig", "rigfile", "warden")
                .whereLayer("joint").mayOnlyAccessLayers("calibration")
                .whereLayer("elsewhere").mayOnlyAccessLayers("quantity", "rig", "rigfile", "program", "warden", "run")
                .whereLayer("warden").mayOnlyAccessLayers("quantity", "rig")
                .whereLayer("run").mayOnlyAccessLayers("quantity", "rig", "program", "warden")
                .whereLayer("prove").mayOnlyAccessLayers("quantity", "rig", "program", "warden", "run")
                .whereLayer("loop").mayOnlyAccessLayers("quantity", "rig", "program", "warden", "run")
                .whereLayer("rig").mayOnlyAccessLayers("quantity")
                .whereLayer("program").mayOnlyAccessLayers("quantity", "rig")
                .whereLayer("findings").mayOnlyAccessLayers("quantity", "rig", "program", "warden", "run")
                .check(PRODUCT);
    }

    @Test
    void warden_run_and_prove_use_no_thread_no_clock_no_database() {
        PURE.check(PRODUCT);
    }

    @Test
    void the_clock_on_the_wall_is_a_label_that_neither_the_loop_nor_a_driver_looks_at() {
        NOTHING_GOES_BY_THE_WALL.check(PRODUCT);
    }

    @Test
    void drivers_do_not_know_that_there_is_a_world_and_emulators_do_not_know_the_drivers() {
        NO_WORLD_IN_DRIVERS.check(PRODUCT);
        NO_DRIVER_IN_EMULATORS.check(PRODUCT);
        PACK_KNOWS_NOTHING.check(PRODUCT);
    }

    @Test
    void the_page_never_talks_to_a_chip_and_nothing_below_it_knows_that_there_is_a_page() {
        NO_CHIP_BEHIND_THE_PAGE.check(PRODUCT);
        NO_PAGE_BELOW_THE_PAGE.check(PRODUCT);
    }

    @Test
    void notices_only_look_and_nothing_on_the_control_thread_knows_of_them() {
        NOTICES_ONLY_LOOK.check(PRODUCT);
        NOBODY_WAITS_FOR_NOTICES.check(PRODUCT);
    }

    @Test
    void the_campaign_stands_on_rehearsals_and_its_judge_knows_no_rule() {
        CAMPAIGN_STANDS_ON_REHEARSALS.check(PRODUCT);
        ONLY_COMMANDS_KNOW_THE_CAMPAIGN.check(PRODUCT);
        THE_JUDGE_KNOWS_NO_RULE.check(PRODUCT);
    }

    @Test
    void a_planted_look_at_the_wall_is_found() {
        JavaClasses planted = new ClassFileImporter().importClasses(PlantedWall.class);

        assertThatThrownBy(() -> NOTHING_GOES_BY_THE_WALL.check(planted)).isInstanceOf(AssertionError.class).hasMessageContaining("PlantedWall");
    }

    @Test
    void a_planted_violation_is_found() {
        JavaClasses planted = new ClassFileImporter().importClasses(PlantedThread.class);

        assertThatThrownBy(() -> PURE.check(planted)).isInstanceOf(AssertionError.class).hasMessageContaining("PlantedThread");
    }
}
