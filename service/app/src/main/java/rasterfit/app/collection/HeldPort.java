package rasterfit.app.collection;

/** A port or cable with the connection that holds it. */
record HeldPort(String connection, PortUse use) {
    HeldPort(String connection, String item, String port) {
        this(connection, new PortUse(item, port));
    }
}
