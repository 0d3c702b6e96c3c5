/** What electron-builder fetches beside the Electron runtime, by platform. */
const TOOLS = {
  linux: 'fpm, which lays out the deb',
  darwin: 'the tool that lays out the dmg',
  win32: 'NSIS and its resources, and the tool that writes version and icon into the program',
};

/**
 * Says what has to be fetched before a package can be made.
 * @param {NodeJS.Platform} platform
 * @returns {string}
 */
export function neededDownloads(platform) {
  const tools = Object.hasOwn(TOOLS, platform)
    ? TOOLS[/** @type {keyof typeof TOOLS} */ (platform)]
    : 'the tools of the platform';
  return (
    'To be fetched, where not yet there: the Electron runtime (from the releases of ' +
    `Electron) and ${tools} (from the releases of electron-builder).`
  );
}

const NO_DOWNLOAD =
  /ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH|certificate|status code|Response code|HTTP ?Error|RequestError|fetch failed|cannot download|failed to download/i;

/**
 * The sentence for a run that made no package.
 * @param {string} output what electron-builder said
 * @returns {string}
 */
export function whyNoPackage(output) {
  if (!NO_DOWNLOAD.test(output)) return 'No package was made; the lines above say why.';
  return (
    'No package was made: a download was refused or did not arrive (the lines above name it). ' +
    'Run "npm run package" again where the releases of Electron and electron-builder can be reached.'
  );
}
