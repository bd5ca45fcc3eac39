import type { MaterialName } from '@fallwright/engine';
import { MATERIALS } from '@fallwright/engine';

/** The matter of a pipe that is spelled out with the words of the page's own list. */
export function materialCalled(words: string): MaterialName | undefined {
  const names = Object.keys(MATERIALS) as MaterialName[];
  return names.find((name) => MATERIALS[name].displayName === words);
}
