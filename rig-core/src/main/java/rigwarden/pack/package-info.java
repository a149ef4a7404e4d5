/** The electro-thermal truth under a rehearsal: cells, joints, current path, source, sink, heat. Knows no rig and no rule. */
package rigwarden.pack;
