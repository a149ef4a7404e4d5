package rigwarden.warden;

/** Energised orders for tests of what stores them; only this package can make them. */
public final class OrdersForTests {
    private OrdersForTests() {}

    public static Orders path(long scan, Way way, Closing stage, double amps, double volts) {
        return new Orders.Energised(new Lease(scan, 100, 100, true), way, way == Way.CHARGE ? 0 : 1, stage, new Setpoint(amps, volts));
    }
}
