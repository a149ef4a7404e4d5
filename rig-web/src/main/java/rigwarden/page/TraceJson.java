package rigwarden.page;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.math.RoundingMode;
import rigwarden.live.Trace;
import rigwarden.paper.Spots;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;

/** A trace as the charts' script takes it. */
final class TraceJson {
    private static final JsonFactory FACTORY = new JsonFactory();

    private TraceJson() {}

    /** Lines of the three charts. */
    static String of(Trace trace) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            json.writeStartObject();
            json.writeArrayFieldStart("t");
            for (double seconds : trace.seconds()) {
                json.writeNumber(rounded(seconds, 1));
            }
            json.writeEndArray();
            json.writeArrayFieldStart("lines");
            for (Trace.Line line : trace.lines()) {
                String chart = chart(line.channel().role());
                if (!chart.isEmpty()) {
                    line(json, line, chart);
                }
            }
            json.writeEndArray();
            json.writeEndObject();
        } catch (IOException e) {
            throw new IllegalStateException("writing into memory failed", e);
        }
        return text.toString();
    }

    private static void line(JsonGenerator json, Trace.Line line, String chart) throws IOException {
        json.writeStartObject();
        json.writeStringField("chart", chart);
        json.writeStringField("name", Spots.brief(line.channel()));
        int decimals = decimals(line.channel());
        numbers(json, "low", line.low(), decimals);
        numbers(json, "high", line.high(), decimals);
        json.writeEndObject();
    }

    private static void numbers(JsonGenerator json, String field, double[] values, int decimals) throws IOException {
        json.writeArrayFieldStart(field);
        for (double value : values) {
            if (Double.isNaN(value)) {
                json.writeNull();
            } else {
                json.writeNumber(rounded(value, decimals));
            }
        }
        json.writeEndArray();
    }

    private static BigDecimal rounded(double value, int decimals) {
        return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN).stripTrailingZeros();
    }

    private static int decimals(Channel channel) {
        return switch (channel.quantity()) {
            case VOLTAGE -> 4;
            case CURRENT -> 2;
            case TEMPERATURE -> 1;
            case CHARGE, SWITCH, TIME, SIZE, RATIO -> 3;
        };
    }

    private static String chart(Role role) {
        return switch (role) {
            case CELL_VOLTS -> "cells";
            case CURRENT -> "current";
            case BODY, STUD, BAR, SHUNT_BODY, CONTACTOR_BODY, ROOM, LOOSE -> "warmth";
            case ACCUMULATED, CLOCK_RATIO, PACK_VOLTS, TAP_VOLTS, BUS_VOLTS, LOOP, COIL_FEED, FEEDBACK, ARM, SOURCE_VOLTS,
                    SOURCE_AMPS, SOURCE_ON, SINK_VOLTS, SINK_AMPS, SINK_ON, RECORDER_LAG, FREE_SPACE, LATENESS -> "";
        };
    }
}
