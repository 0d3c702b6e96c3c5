/** The Node-API version the database driver's binary is built against. */
const NEEDED_NODE_API = 10;

/**
 * Refuses to start on a Node the database driver cannot load: there it would end the process
 * without a word (a segmentation fault under Node 20).
 * @throws Error with one sentence that says what to do.
 */
export function assertRuntime(versions: { node?: string; napi?: string } = process.versions): void {
  const nodeMajor = Number.parseInt(versions.node ?? '0', 10);
  if (nodeMajor >= 22 && Number(versions.napi ?? 0) >= NEEDED_NODE_API) return;
  throw new Error(
    `Trotwell needs Node 22 or newer, but runs on Node ${versions.node ?? 'of unknown version'}. ` +
      'Start it with "npm start", which brings its own Node 24.',
  );
}
