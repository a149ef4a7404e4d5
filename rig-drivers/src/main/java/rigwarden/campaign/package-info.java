/** The fault campaign: faults from outside lists put into rehearsals at random instants, judged by the model's physics alone. */
package rigwarden.campaign;
