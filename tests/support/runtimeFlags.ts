/**
 * Flags for every Node process that runs our sources in a test. As source, the service and its
 * printing thread strip types by WebAssembly, and V8's collection of WebAssembly code can end a
 * process in which several threads do so ("allocations_.erase(addr) == 1", nodejs/node issue
 * 64500; seen once here). The app as built has no WebAssembly in it and needs none of this.
 */
export const SOURCE_RUN_FLAGS = ['--no-wasm-code-gc', '--no-memory-protection-keys'] as const;
