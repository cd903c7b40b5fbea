/** Files of the print room: TIFF, PNG, JPEG with profile, measurement text, truth. */
package org.printassay.demo.file;
