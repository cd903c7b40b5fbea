/**
 * Reading JSON from outside: size, schema version and JSON Schema are checked before anything is
 * used. The published schemas are the resources beside this package, {@code <kind>-<version>
 * .schema.json}. Start with {@link org.printassay.json.CheckedJson}. {@link
 * org.printassay.json.JsonNumbers} rounds what is written.
 */
package org.printassay.json;
