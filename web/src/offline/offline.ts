/**
 * Works without a network: watches the worker that keeps the app (sw.js, made by vite.config.ts), and says what it is at.
 *
 * A newer version is fetched beside the one in use and waits. It is taken only when somebody asks for it in one of the open
 * tabs; then every tab saves and loads itself again, since the files of the old version go when the new one takes over.
 */
import type { Store } from '../state/store.ts';
import { createStore } from '../state/store.ts';

export interface OfflineState {
  /** The app is kept whole in this browser since this visit, and nobody has waved the news away. */
  readonly isNewlyReady: boolean;
  /** The place that the app comes from does not answer. */
  readonly isOffline: boolean;
  /**
   * `unsaved`: asked for, but what is typed would be lost. `takenElsewhere`: another tab has taken it, and this one stays
   * because what is typed would be lost.
   */
  readonly newer: 'none' | 'offered' | 'putOff' | 'taking' | 'unsaved' | 'takenElsewhere';
}

export interface Offline {
  readonly state: Store<OfflineState>;
  readonly takeNewer: () => Promise<void>;
  readonly putOffNewer: () => void;
  readonly waveReadyAway: () => void;
}

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

/** `save` writes down what is typed and says whether it will outlast the page. */
export function createOffline(save: () => Promise<boolean>): Offline {
  const state = createStore<OfflineState>({
    isNewlyReady: false,
    isOffline: !navigator.onLine,
    newer: 'none',
  });
  const show = (part: Partial<OfflineState>): void => state.update((now) => ({ ...now, ...part }));

  let registration: ServiceWorkerRegistration | undefined;
  const takeNewer = async (): Promise<void> => {
    show({ newer: 'taking' });
    if (!(await save())) return show({ newer: 'unsaved' });
    const { waiting } = registration ?? {};
    // The message is that of Workbox. The new worker then takes all tabs over, and `onTakenOver` loads them again.
    if (waiting) waiting.postMessage({ type: 'SKIP_WAITING' });
    else window.location.reload();
  };
  const onTakenOver = async (): Promise<void> => {
    if (await save()) window.location.reload();
    else show({ newer: 'takenElsewhere' });
  };

  const workers = workersOf(navigator);
  if (import.meta.env.PROD && workers !== undefined) {
    const watch = async (): Promise<void> => {
      registration = await register(workers, {
        onReady: () => show({ isNewlyReady: true }),
        onNewer: () => show({ newer: 'offered' }),
        onTakenOver: () => void onTakenOver(),
      });
      if (registration !== undefined) lookForNewer(registration, state);
    };
    // Without the worker all goes on as long as there is a network; its lack needs no words.
    afterLoad(() => void watch().catch(() => {}));
  }
  return {
    state,
    takeNewer,
    putOffNewer: () => show({ newer: 'putOff' }),
    waveReadyAway: () => show({ isNewlyReady: false }),
  };
}

interface Hearers {
  readonly onReady: () => void;
  readonly onNewer: () => void;
  readonly onTakenOver: () => void;
}

async function register(
  workers: ServiceWorkerContainer,
  { onReady, onNewer, onTakenOver }: Hearers,
): Promise<ServiceWorkerRegistration | undefined> {
  const known = await workers.getRegistration();
  // A page that was loaded past the cache has no controller, but an old worker may still be the one in use.
  let inUse = workers.controller ?? known?.active ?? undefined;
  let isFirst = inUse === undefined;
  workers.addEventListener('controllerchange', () => {
    const now = workers.controller ?? undefined;
    if (inUse !== undefined && now !== inUse) onTakenOver();
    inUse = now;
  });

  await workers.register('/sw.js');
  // Asked for anew: a browser that was told to block workers says it has registered one, and has not.
  const registration = await workers.getRegistration();
  if (registration === undefined) return undefined;
  const look = (): void => {
    if (isFirst && registration.active?.state === 'activated') {
      isFirst = false;
      onReady();
    }
    if (!isFirst && registration.waiting !== null) onNewer();
  };
  const follow = (coming: ServiceWorker | null): void =>
    coming?.addEventListener('statechange', look);
  registration.addEventListener('updatefound', () => follow(registration.installing));
  follow(registration.installing);
  follow(registration.waiting);
  follow(registration.active);
  look();
  return registration;
}

/** Asks now, when the page comes to the front or the network back, and now and then. That shows who is offline, too. */
function lookForNewer(registration: ServiceWorkerRegistration, state: Store<OfflineState>): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let lookedAt = 0;
  const look = async (): Promise<void> => {
    lookedAt = Date.now();
    const isOffline = await registration.update().then(
      () => false,
      () => true,
    );
    state.update((now) => (now.isOffline === isOffline ? now : { ...now, isOffline }));
    clearTimeout(timer);
    // Judgement: often enough to take the words away soon, seldom enough to cost nothing.
    timer = setTimeout(() => void look(), isOffline ? MINUTE : HOUR);
  };
  window.addEventListener('online', () => void look());
  window.addEventListener('offline', () => void look());
  document.addEventListener('visibilitychange', () => {
    const isDue = Date.now() - lookedAt > MINUTE;
    if (document.visibilityState === 'visible' && isDue) void look();
  });
  void look();
}

/** None over plain HTTP from another machine, and where the browser forbids storage even naming them may throw. */
function workersOf(browser: Navigator): ServiceWorkerContainer | undefined {
  try {
    return 'serviceWorker' in browser ? browser.serviceWorker : undefined;
  } catch {
    return undefined;
  }
}

/** The first visit fetches what it shows before it fetches what it keeps. */
function afterLoad(act: () => void): void {
  if (document.readyState === 'complete') act();
  else window.addEventListener('load', act, { once: true });
}
