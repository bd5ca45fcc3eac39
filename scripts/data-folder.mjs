/** Where a person's data belong on each system. Plain JavaScript: the launcher runs before anything is installed. */
import { homedir } from 'node:os';
import { join } from 'node:path';

/**
 * Source: XDG Base Directory Specification 0.8, `$XDG_DATA_HOME` and its default; for the others: memory.
 *
 * @param {string} platform
 * @param {NodeJS.ProcessEnv} environment
 * @param {string} home
 */
export function defaultDataFolder(
  platform = process.platform,
  environment = process.env,
  home = homedir(),
) {
  if (platform === 'win32') {
    return join(environment.LOCALAPPDATA || join(home, 'AppData', 'Local'), 'Fallwright');
  }
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Fallwright');
  return join(environment.XDG_DATA_HOME || join(home, '.local', 'share'), 'fallwright');
}
