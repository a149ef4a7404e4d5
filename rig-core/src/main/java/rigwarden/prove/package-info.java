/** The guided check of a rig before it is trusted: scans and a person's answers in, prompts and outcomes out. */
package rigwarden.prove;
