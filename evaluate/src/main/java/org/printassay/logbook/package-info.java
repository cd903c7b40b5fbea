/**
 * The logbook: evaluations kept over time, in an SQLite file or a PostgreSQL database. Start with
 * {@link org.printassay.logbook.Logbook#open}. What is kept are whole evaluations (their files'
 * text, packed) and, for trends, their figures. {@link org.printassay.logbook.SteadyPrints} tells
 * those who check and compare what unchanged prints are like.
 *
 * <p>An SQLite file has its usual rollback journal, not a write-ahead log: that needs memory which
 * all writers share and so breaks on a folder of another machine (sqlite.org/wal.html), where
 * people will put it. Every change is one transaction that begins with the write lock.
 */
package org.printassay.logbook;
