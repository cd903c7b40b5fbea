package org.printassay.reading;

/** Something the reader of a result must know. */
public record Warning(WarningCode code, String text) {}
