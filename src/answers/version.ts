/** Version of the package, which is the engine's too: results carry it. A test holds it to package.json's. */
export const ENGINE_VERSION = "0.1.0";
