package org.printassay.evaluation;

/** One file a result was read from: name without folders, SHA-256 in hexadecimal. */
public record SourceFile(String name, String sha256) {}
