package org.printassay.cli;

import picocli.CommandLine.IVersionProvider;

/** The version that the build wrote into the jar's manifest. */
final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
        String version = Main.class.getPackage().getImplementationVersion();
        return new String[] {"printassay " + (version == null ? "(built from source)" : version)};
    }
}
