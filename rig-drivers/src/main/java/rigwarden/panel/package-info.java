/** The rig's GPIO lines: coil orders, heartbeat, sounder, and the senses that say what the hardware did. */
package rigwarden.panel;
