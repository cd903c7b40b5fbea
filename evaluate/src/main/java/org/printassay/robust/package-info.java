/** Estimates that outliers leave alone, for all steps that read or judge. */
package org.printassay.robust;
