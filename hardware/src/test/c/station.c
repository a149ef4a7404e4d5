/*
 * An independent instrument for LibmodbusTest: a source at the map of rigs/one-cell-modbus.toml, answered by libmodbus.
 * cc -o station station.c $(pkg-config --cflags --libs libmodbus); ./station PORT
 */
#include <errno.h>
#include <modbus.h>
#include <stdio.h>
#include <stdint.h>

int main(int count, char **words) {
    uint8_t query[MODBUS_RTU_MAX_ADU_LENGTH];
    modbus_t *line = count == 2 ? modbus_new_rtu(words[1], 115200, 'E', 8, 1) : NULL;
    modbus_mapping_t *map = modbus_mapping_new(8, 8, 0x200, 8);
    if (line == NULL || map == NULL || modbus_set_slave(line, 7) != 0 || modbus_connect(line) != 0) {
        return 1;
    }
    puts("ready");
    fflush(stdout);
    for (;;) {
        int length = modbus_receive(line, query);
        if (length < 0) {
            if (errno == EBADF || errno == EIO) {
                return 0;
            }
            modbus_flush(line);
            continue;
        }
        map->tab_input_bits[0] = map->tab_bits[0];
        map->tab_input_registers[0] = 3300;
        map->tab_input_registers[1] = map->tab_bits[0] ? map->tab_registers[0x101] : 0;
        if (length > 0 && modbus_reply(line, query, length, map) >= 0) {
            printf("%d %u %u %u %u\n", map->tab_bits[0], map->tab_registers[0x100], map->tab_registers[0x101],
                    map->tab_registers[0x110], map->tab_registers[0x120]);
            fflush(stdout);
        }
    }
}
