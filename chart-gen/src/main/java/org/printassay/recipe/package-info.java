/** What a chart is to hold: the input of {@code Charts.create}. */
package org.printassay.recipe;
