import { homedir } from 'node:os';
import { join } from 'node:path';

/**
 * The folder of records: the platform's user-data folder, the same for the Electron window and the
 * browser window. `TROTWELL_DATA` overrides it.
 */
export function dataFolder(
  env: NodeJS.ProcessEnv = process.env,
  platform: NodeJS.Platform = process.platform,
  home: string = homedir(),
): string {
  if (env['TROTWELL_DATA']) return env['TROTWELL_DATA'];
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Trotwell');
  if (platform === 'win32')
    return join(env['APPDATA'] ?? join(home, 'AppData', 'Roaming'), 'Trotwell');
  return join(env['XDG_CONFIG_HOME'] || join(home, '.config'), 'Trotwell');
}
