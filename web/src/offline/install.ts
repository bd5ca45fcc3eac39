/** Puts the app among the programs of the device, where the browser offers that. */
import type { Store } from '../state/store.ts';
import { createStore } from '../state/store.ts';

/** Not in the DOM types: Web Application Manifest Incubations (WICG), and not in every browser. */
interface InstallOffer extends Event {
  readonly prompt: () => Promise<unknown>;
}

export interface Install {
  readonly isOffered: Store<boolean>;
  readonly ask: () => Promise<void>;
}

/** Must be made before the page waits for anything: the browser makes its offer once. */
export function createInstall(): Install {
  const isOffered = createStore(false);
  let offer: InstallOffer | undefined;
  window.addEventListener('beforeinstallprompt', (event) => {
    // A button of ours says it, where and when it does not disturb.
    event.preventDefault();
    offer = event as InstallOffer;
    isOffered.update(() => true);
  });
  window.addEventListener('appinstalled', () => isOffered.update(() => false));
  return {
    isOffered,
    ask: async () => {
      // An offer can be taken up once; after a refusal the browser makes a new one when it sees fit.
      isOffered.update(() => false);
      await offer?.prompt();
      offer = undefined;
    },
  };
}
