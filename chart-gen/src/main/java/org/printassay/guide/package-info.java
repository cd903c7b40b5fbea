/** The short illustrated page that comes with a chart: how to print it and how to scan it. */
package org.printassay.guide;
