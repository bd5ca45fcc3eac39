/** Where films are made: one worker, hired at the first question and hired anew when a newer question overtakes it. */
import type { BeatFilm, FilmOptions, Installation } from '@fallwright/engine';
import type { Remote } from 'comlink';
import { wrap } from 'comlink';
import type { FilmWork } from './film-worker.ts';

export interface FilmRoom {
  /** A film of the installation. A question still running is dropped: its promise never settles. */
  readonly film: (installation: Installation, options: FilmOptions) => Promise<BeatFilm>;
  /** Ends the worker. */
  readonly close: () => void;
}

interface Hired {
  readonly worker: Worker;
  readonly work: Remote<FilmWork>;
  /** Rejects when the worker's script cannot load or breaks outside a question. */
  readonly broken: Promise<never>;
}

export function openFilmRoom(): FilmRoom {
  let hired: Hired | undefined;
  let isBusy = false;
  const close = (): void => {
    hired?.worker.terminate();
    hired = undefined;
    isBusy = false;
  };
  return {
    film: async (installation, options) => {
      if (isBusy) close();
      hired ??= hire();
      const mine = hired;
      isBusy = true;
      try {
        return await Promise.race([mine.work.film(installation, options), mine.broken]);
      } catch (error) {
        if (hired === mine) close();
        throw error;
      } finally {
        if (hired === mine) isBusy = false;
      }
    },
    close,
  };
}

function hire(): Hired {
  const worker = new Worker(new URL('./film-worker.ts', import.meta.url), { type: 'module' });
  const broken = new Promise<never>((_, reject) => {
    worker.addEventListener('error', (event) => {
      reject(new Error(event.message || 'the film’s script could not be loaded'));
    });
  });
  // Nobody may be asking at that moment; whoever asks hears of it through the race above.
  broken.catch(() => {});
  return { worker, work: wrap<FilmWork>(worker), broken };
}
