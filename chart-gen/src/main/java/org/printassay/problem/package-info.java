/** One exception type for everything from outside that cannot be used. Depends on nothing. */
package org.printassay.problem;
