const NEEDED = { major: 22, minor: 18 };

/**
 * What to say to a Node that cannot run Trotwell's TypeScript and its database driver; null for one
 * that can.
 * @param {string} version such as `24.1.0`
 * @returns {string | null}
 */
export function tooOld(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  if (major > NEEDED.major || (major === NEEDED.major && minor >= NEEDED.minor)) return null;
  return (
    `Trotwell needs Node ${NEEDED.major}.${NEEDED.minor} or newer, but this is Node ${version}. ` +
    'Start it with "npm start", which brings its own Node 24.'
  );
}

/** Ends the process with a sentence where the Node is too old. */
export function refuseOldNode() {
  const sentence = tooOld(process.versions.node);
  if (sentence === null) return;
  console.error(sentence);
  process.exit(1);
}
