package rigwarden.warden;

/** Energised orders for tests of what stores them; only this package can make them. */
public final class OrdersForTests {
    private OrdersForTests() {}

    /** A healthy scan's lease with these ceilings. */
    public static Lease lease(double chargeAmps, double dischargeAmps, boolean steady) {
        return new Lease(1, chargeAmps, dischargeAmps, steady);
    }

    public static Orders path(long scan, Way way, Closing stage, double amps, double volts) {
        return new Orders.Energised(new Lease(scan, 100, 100, true), way, way == Way.CHARGE ? 0 : 1, stage, new Setpoint(amps, volts));
    }
}
