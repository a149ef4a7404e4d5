package rigwarden.serial;

import com.digitalpetri.modbus.pdu.ModbusRequestPdu;
import com.digitalpetri.modbus.pdu.ReadCoilsRequest;
import com.digitalpetri.modbus.pdu.ReadDiscreteInputsRequest;
import com.digitalpetri.modbus.pdu.ReadHoldingRegistersRequest;
import com.digitalpetri.modbus.pdu.ReadInputRegistersRequest;
import com.digitalpetri.modbus.pdu.WriteMultipleRegistersRequest;
import com.digitalpetri.modbus.pdu.WriteSingleCoilRequest;
import com.digitalpetri.modbus.pdu.WriteSingleRegisterRequest;
import rigwarden.rig.Register;

/** One request to an instrument that speaks Modbus, and what its answer must be. */
sealed interface Exchange {
    Register register();

    ModbusRequestPdu request();

    /** A number is written; the answer repeats the request, or its first four bytes. */
    record Write(Register register, ModbusRequestPdu request) implements Exchange {}

    /** A number is read. */
    record Read(Register register, ModbusRequestPdu request) implements Exchange {}

    /**
     * A number is read that must be this one.
     *
     * @param value in V, A or s
     * @param within how far it may be off
     */
    record ReadBack(Register register, ModbusRequestPdu request, double value, double within) implements Exchange {}

    static Exchange write(Register register, double value) {
        int[] counts = Counts.of(register, value);
        if (register.bit()) {
            return new Write(register, new WriteSingleCoilRequest(register.address(), counts[0] != 0));
        }
        return new Write(register, register.function() == Register.WRITE_ONE
                ? new WriteSingleRegisterRequest(register.address(), counts[0])
                : new WriteMultipleRegistersRequest(register.address(), counts.length, bytes(counts)));
    }

    private static byte[] bytes(int... counts) {
        byte[] bytes = new byte[2 * counts.length];
        for (int i = 0; i < counts.length; i++) {
            bytes[2 * i] = (byte) (counts[i] >> 8);
            bytes[2 * i + 1] = (byte) counts[i];
        }
        return bytes;
    }

    static Exchange read(Register register) {
        return new Read(register, reading(register));
    }

    static Exchange readBack(Register register, double value, double within) {
        return new ReadBack(register, reading(register), value, within);
    }

    private static ModbusRequestPdu reading(Register register) {
        int count = register.type().registers();
        if (register.bit()) {
            return register.function() == Register.READ_COILS
                    ? new ReadCoilsRequest(register.address(), 1)
                    : new ReadDiscreteInputsRequest(register.address(), 1);
        }
        return register.function() == Register.READ_HOLDING
                ? new ReadHoldingRegistersRequest(register.address(), count)
                : new ReadInputRegistersRequest(register.address(), count);
    }
}
