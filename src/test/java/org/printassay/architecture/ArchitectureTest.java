package org.printassay.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Dependencies point one way: cli to evaluate and charts-demo, both to chart-gen. */
@AnalyzeClasses(
        packages = "org.printassay",
        importOptions = {ImportOption.DoNotIncludeTests.class})
class ArchitectureTest {
    private static final String[] CHART_GEN = {
        "org.printassay.problem..",
        "org.printassay.colour..",
        "org.printassay.chart..",
        "org.printassay.sheet..",
        "org.printassay.recipe..",
        "org.printassay.layout..",
        "org.printassay.pdf..",
        "org.printassay.raster..",
        "org.printassay.guide..",
        "org.printassay.json..",
        "org.printassay.measurement.."
    };
    private static final String[] EVALUATE = {
        "org.printassay.robust..",
        "org.printassay.scan..",
        "org.printassay.scannermodel..",
        "org.printassay.scannercalibration..",
        "org.printassay.locate..",
        "org.printassay.sample..",
        "org.printassay.prints..",
        "org.printassay.calibrate..",
        "org.printassay.reading..",
        "org.printassay.surface..",
        "org.printassay.texture..",
        "org.printassay.metric..",
        "org.printassay.promise..",
        "org.printassay.evaluation..",
        "org.printassay.compare..",
        "org.printassay.check..",
        "org.printassay.report..",
        "org.printassay.trend..",
        "org.printassay.logbook.."
    };
    private static final String DEMO = "org.printassay.demo..";
    private static final String CLI = "org.printassay.cli..";

    @ArchTest
    static final ArchRule everyClassHasARoom = classes().should().resideInAnyPackage(all());

    @ArchTest
    static final ArchRule colourDependsOnNothingOfTheProject =
            noClasses()
                    .that()
                    .resideInAPackage("org.printassay.colour..")
                    .should()
                    .dependOnClassesThat(
                            JavaClass.Predicates.resideInAPackage("org.printassay..")
                                    .and(
                                            JavaClass.Predicates.resideOutsideOfPackage(
                                                    "org.printassay.colour..")));

    @ArchTest
    static final ArchRule chartsKnowNothingOfScans =
            noClasses()
                    .that()
                    .resideInAnyPackage(CHART_GEN)
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(join(EVALUATE, DEMO, CLI));

    @ArchTest
    static final ArchRule evaluationKnowsNothingOfThePrintRoom =
            noClasses()
                    .that()
                    .resideInAnyPackage(EVALUATE)
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(DEMO, CLI);

    @ArchTest
    static final ArchRule thePrintRoomKnowsNothingOfTheEvaluation =
            noClasses()
                    .that()
                    .resideInAPackage(DEMO)
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(join(EVALUATE, CLI));

    @ArchTest
    static final ArchRule onlyTheDemoCommandUsesThePrintRoom =
            noClasses()
                    .that()
                    .resideInAPackage(CLI)
                    .and()
                    .haveSimpleNameNotStartingWith("Demo")
                    .should()
                    .dependOnClassesThat()
                    .resideInAPackage(DEMO);

    @ArchTest
    static final ArchRule packagesFormNoCircles =
            slices().matching("org.printassay.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule roomsOfCalibrateFollowEachOther =
            layeredArchitecture()
                    .consideringOnlyDependenciesInAnyPackage("org.printassay.calibrate..")
                    .layer("light")
                    .definedBy("org.printassay.calibrate.light")
                    .layer("codes")
                    .definedBy("org.printassay.calibrate.codes")
                    .layer("outlier")
                    .definedBy("org.printassay.calibrate.outlier")
                    .layer("part")
                    .definedBy("org.printassay.calibrate.part")
                    .layer("print")
                    .definedBy("org.printassay.calibrate")
                    .whereLayer("light")
                    .mayOnlyBeAccessedByLayers("codes", "outlier", "part", "print")
                    .whereLayer("codes")
                    .mayOnlyBeAccessedByLayers("outlier", "part", "print")
                    .whereLayer("outlier")
                    .mayOnlyBeAccessedByLayers("part")
                    .whereLayer("part")
                    .mayOnlyBeAccessedByLayers("print")
                    .whereLayer("print")
                    .mayNotBeAccessedByAnyLayer();

    /** The print room and the evaluation never meet, and may have words in common. */
    @ArchTest
    static void namesMeanOneThing(JavaClasses classes) {
        Map<String, Set<String>> packages = new TreeMap<>();
        for (JavaClass one : classes) {
            boolean open =
                    one.isTopLevelClass() && one.getModifiers().contains(JavaModifier.PUBLIC);
            if (open && !JavaClass.Predicates.resideInAPackage(DEMO).test(one)) {
                packages.computeIfAbsent(one.getSimpleName(), name -> new TreeSet<>())
                        .add(one.getPackageName());
            }
        }
        packages.values().removeIf(those -> those.size() == 1);
        assertEquals(Map.of(), packages);
    }

    private static String[] all() {
        return join(join(CHART_GEN, EVALUATE), DEMO, CLI);
    }

    private static String[] join(String[] some, String... more) {
        String[] all = Arrays.copyOf(some, some.length + more.length);
        System.arraycopy(more, 0, all, some.length, more.length);
        return all;
    }
}
