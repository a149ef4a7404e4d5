/**
 * The bus contract: what every driver relies on, shown on the emulated provider in this process and, in an emulated arm64
 * board under Debian 13's own kernel, through the official plugins. Nothing here is part of the product.
 */
package rigwarden.kernel;
