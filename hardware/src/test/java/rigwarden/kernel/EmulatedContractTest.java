package rigwarden.kernel;

import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

class EmulatedContractTest {
    @TestFactory
    Stream<DynamicTest> the_emulated_provider_keeps_the_bus_contract() {
        return BusContract.cases(new EmulatedHeader(), new EmulatedSpiHeader()).stream()
                .map(sentence -> DynamicTest.dynamicTest(sentence.name(), sentence.body()::run));
    }
}
