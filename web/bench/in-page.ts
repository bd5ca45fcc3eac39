/**
 * What runs inside the page while it is measured: it listens, and changes nothing that the app does, but for the film of
 * the Beat leaf, which can be made longer. Each function is sent to the browser as text, so none may use another.
 */

/** One question to a worker, on the page's clock. */
export interface Asked {
  readonly worker: string;
  readonly what: string;
  readonly posted: number;
  answered?: number;
}

/** Moments on the page's clock, in milliseconds. */
export interface KeyMoments {
  /** The browser took the key. */
  readonly key: number;
  /** The box heard of it. */
  readonly input: number;
  /** Verdict, litres or facts stand changed in the page. */
  readonly changed: number;
  /** The frame with them has been painted. */
  readonly painted: number;
  /** The last change of the whole answer, pressures and all. */
  readonly whole: number;
}

export interface Listening {
  readonly asked: Asked[];
  /** Moments of the first answer since the page was opened. */
  firstAnswer?: { readonly changed: number; readonly painted: number };
  /** Frames that a film of the Beat leaf is stretched to; none leaves it as it is. */
  filmFrames?: number;
  /** When the page was handed the last stretched film. */
  filmArrived?: number;
  key?: Promise<KeyMoments>;
}

declare global {
  interface Window {
    listening: Listening;
  }
}

/** Listens to workers and to the first answer. For `addInitScript`: it runs before the app does. */
export function listen(): void {
  const listening: Listening = { asked: [] };
  window.listening = listening;

  type Film = Record<string, unknown> & { readonly frames: number; readonly nodes: number };
  /** The same film with more frames between its frames. */
  const stretched = (film: Film, frames: number): Film => {
    const longer = (values: Float64Array | Float32Array, each: number) => {
      const made = values instanceof Float64Array ? Float64Array : Float32Array;
      const out = new made(frames * each);
      for (let frame = 0; frame < frames; frame++) {
        const at = (frame * (film.frames - 1)) / (frames - 1);
        const before = Math.min(film.frames - 2, Math.floor(at));
        const share = at - before;
        for (let i = 0; i < each; i++) {
          const a = values[before * each + i] as number;
          const b = values[(before + 1) * each + i] as number;
          out[frame * each + i] = a + share * (b - a);
        }
      }
      return out;
    };
    const columns = Object.entries(film).map(([name, value]) => {
      if (!(value instanceof Float64Array) && !(value instanceof Float32Array)) {
        return [name, value] as const;
      }
      return [name, longer(value, value.length / film.frames)] as const;
    });
    return { ...film, ...Object.fromEntries(columns), frames };
  };

  window.Worker = class extends Worker {
    readonly #name: string;
    readonly #open = new Map<string, Asked>();

    constructor(script: string | URL, options?: WorkerOptions) {
      super(script, options);
      this.#name = /([\w-]+-worker)/.exec(String(script))?.[1] ?? String(script);
      super.addEventListener('message', (event: MessageEvent) => {
        const asked = this.#open.get(event.data?.id);
        if (asked !== undefined) asked.answered = performance.now();
      });
    }

    override postMessage(
      message: { id?: string; path?: string[] },
      options?: Transferable[] | StructuredSerializeOptions,
    ): void {
      const asked = {
        worker: this.#name,
        what: (message.path ?? []).join('.'),
        posted: performance.now(),
      };
      listening.asked.push(asked);
      if (message.id !== undefined) this.#open.set(message.id, asked);
      super.postMessage(message, Array.isArray(options) ? { transfer: options } : options);
    }

    override addEventListener(
      type: string,
      listener: EventListenerOrEventListenerObject | null,
      options?: boolean | AddEventListenerOptions,
    ): void {
      const isFilm = type === 'message' && this.#name === 'film-worker';
      if (!isFilm || typeof listener !== 'function') {
        super.addEventListener(type, listener as EventListener, options);
        return;
      }
      super.addEventListener(type, (event) => {
        const { data } = event as MessageEvent;
        const film = data?.value;
        const frames = listening.filmFrames;
        if (frames === undefined || film?.frames === undefined) {
          listener.call(this, event);
          return;
        }
        const value = stretched(film, frames);
        listening.filmArrived = performance.now();
        listener.call(this, new MessageEvent('message', { data: { ...data, value } }));
      });
    }
  };

  const first = new MutationObserver(() => {
    if (document.querySelector('#answer .word') === null) return;
    first.disconnect();
    const changed = performance.now();
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => {
        listening.firstAnswer = { changed, painted: performance.now() };
      };
      port2.postMessage(null);
    });
  });
  first.observe(document, { childList: true, subtree: true });
}

/** Puts the caret so that the next digit takes the place of one in the box, and waits for that key. */
export function awaitKey({
  id,
  digit,
  watched,
  patience,
}: {
  readonly id: string;
  /** Which character of the box is replaced. */
  readonly digit: number;
  /** How long the answer is watched at least, so that its later parts are seen too. */
  readonly watched: number;
  readonly patience: number;
}): void {
  const box = document.getElementById(id) as HTMLInputElement;
  const answer = document.getElementById('answer') as HTMLElement;
  const said = (): string =>
    ['.word', '.great', '.facts']
      .map((part) => answer.querySelector(part)?.textContent ?? '')
      .join('|');
  box.focus({ preventScroll: true });
  box.setSelectionRange(digit, digit + 1);
  const before = said();
  window.listening.key = new Promise((resolve, reject) => {
    const moments = { key: 0, input: 0, changed: 0, painted: 0, whole: 0 };
    const onKey = (event: KeyboardEvent): void => {
      moments.key = event.timeStamp;
    };
    const onInput = (): void => {
      moments.input = performance.now();
    };
    const observer = new MutationObserver(() => {
      if (moments.input === 0) return;
      moments.whole = performance.now();
      if (moments.changed > 0 || said() === before) return;
      moments.changed = moments.whole;
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => {
          moments.painted = performance.now();
        };
        port2.postMessage(null);
      });
    });
    window.addEventListener('keydown', onKey, { capture: true, once: true });
    box.addEventListener('input', onInput, { capture: true, once: true });
    observer.observe(answer, {
      childList: true,
      subtree: true,
      characterData: true,
      attributes: true,
    });
    const begun = performance.now();
    const look = setInterval(() => {
      const waited = performance.now() - begun;
      const isSettled = moments.painted > 0 && waited > watched;
      if (!isSettled && waited < patience) return;
      clearInterval(look);
      observer.disconnect();
      if (isSettled) resolve(moments);
      else reject(new Error(`no new answer within ${patience} ms: ${before}; ${box.value}`));
    }, 50);
  });
  // Whoever asks for it later hears of its failure.
  window.listening.key.catch(() => {});
}
