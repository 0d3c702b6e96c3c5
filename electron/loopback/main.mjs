// Entry of the loopback host. Plain JavaScript: it must be able to tell an old Node what is missing.
const [major, minor] = process.versions.node.split('.').map(Number);

/** Serves Trotwell on 127.0.0.1 until Ctrl-C. */
export async function serve(options) {
  if (major < 22 || (major === 22 && minor < 18)) {
    console.error(
      `Trotwell needs Node 22.18 or newer, but this is Node ${process.versions.node}. ` +
        'Start it with "npm start", which brings its own Node 24.',
    );
    process.exit(1);
  }
  const { serveUntilStopped } = await import('./serve.ts');
  await serveUntilStopped(options);
}

if (import.meta.main) {
  const port = process.argv.find((argument) => argument.startsWith('--port='));
  await serve({
    openBrowser: process.argv.includes('--open'),
    ...(port === undefined ? {} : { port: Number(port.slice('--port='.length)) }),
  });
}
