import { expect, test } from 'vitest';
import { defaultDataFolder } from './data-folder.mjs';

test('data stand where the system keeps those of a person', () => {
  const home = '/home/ann';
  expect(defaultDataFolder('linux', {}, home)).toBe('/home/ann/.local/share/fallwright');
  expect(defaultDataFolder('linux', { XDG_DATA_HOME: '/data' }, home)).toBe('/data/fallwright');
  expect(defaultDataFolder('darwin', {}, home)).toBe(
    '/home/ann/Library/Application Support/Fallwright',
  );
});
