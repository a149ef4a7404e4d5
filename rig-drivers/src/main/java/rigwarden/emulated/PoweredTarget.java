package rigwarden.emulated;

/** A chip on an I2C bus whose supply can dip. */
public interface PoweredTarget extends I2cTarget {
    /** Takes the supply away and gives it back: registers at their reset values, conversions begun anew. */
    void powerOnReset();
}
