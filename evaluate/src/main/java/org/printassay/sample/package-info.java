/** From placed scans to one robust sample a patch, in linear light. */
package org.printassay.sample;
