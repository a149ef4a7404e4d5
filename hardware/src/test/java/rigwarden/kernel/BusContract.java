package rigwarden.kernel;

import java.util.List;
import java.util.stream.Stream;

/** All that is asked of every provider. */
final class BusContract {
    private BusContract() {}

    static List<Case> cases(Header header, SpiHeader spi) {
        return Stream.of(LineContract.cases(header), ChipContract.cases(header), DriverContract.cases(header), SpiContract.cases(spi),
                        SpiDriverContract.cases(spi))
                .flatMap(List::stream)
                .toList();
    }
}
