/**
 * Sound as it comes in, turned to power by band and time: all that counting beats needs of it.
 *
 * Bands are even on a logarithmic axis, so that the low rumble of water does not drown the click of a valve. A class,
 * because a microphone feeds it block after block for minutes; it keeps bands and never the sound itself.
 */
import { PowerSpectrum } from '../../numerics/power-spectrum.ts';
import type { Hertz, Ratio, Second } from '../../quantities.ts';

/** Judgement: a window of 20 ms keeps two clicks 40 ms apart apart, and has bands for a low knock. */
const WINDOW: Second = 0.02;
const HOPS_IN_WINDOW = 4;
const LOWEST: Hertz = 120;
const HIGHEST: Hertz = 10_000;
const MOST_BANDS = 20;
/** Judgement: ten minutes of a bench test; a longer listening keeps its last ten. */
export const LONGEST_HEARD: Second = 600;
/** A sample as large as this has hit the end of its range. */
const FULL_SCALE = 0.999;
/** Rates of any recorder in use. */
export const LEAST_SAMPLE_RATE: Hertz = 4000;
export const MOST_SAMPLE_RATE: Hertz = 400_000;

export interface SoundFrames {
  /** Middle of the first frame. */
  readonly start: Second;
  readonly step: Second;
  readonly bands: number;
  readonly count: number;
  /** Power, frame after frame. */
  readonly power: Float32Array;
  /** Largest sample as a share of full scale. */
  readonly peak: Ratio;
  /** Share of the samples that hit the end of their range. */
  readonly clipped: Ratio;
  /** From the first sample to the last. */
  readonly lasts: Second;
}

export class SoundEar {
  readonly sampleRate: Hertz;
  readonly #spectrum: PowerSpectrum;
  readonly #edges: readonly number[];
  readonly #hop: number;
  readonly #window: Float64Array;
  readonly #power: Float64Array;
  readonly #mostFrames: number;
  #filled = 0;
  #rows: Float32Array;
  #first = 0;
  #count = 0;
  #samples = 0;
  #peak = 0;
  #clipped = 0;

  /** @throws RangeError when the rate is none of a recorder. */
  constructor(sampleRate: Hertz) {
    if (!(sampleRate >= LEAST_SAMPLE_RATE && sampleRate <= MOST_SAMPLE_RATE)) {
      throw new RangeError(
        `sampleRate must be ${LEAST_SAMPLE_RATE} to ${MOST_SAMPLE_RATE} Hz, got ${sampleRate}`,
      );
    }
    this.sampleRate = sampleRate;
    const size = 2 ** Math.round(Math.log2(WINDOW * sampleRate));
    this.#spectrum = new PowerSpectrum(size);
    this.#hop = size / HOPS_IN_WINDOW;
    this.#window = new Float64Array(size);
    this.#power = new Float64Array(size / 2 + 1);
    this.#edges = bandEdges(size, sampleRate);
    this.#mostFrames = Math.ceil((LONGEST_HEARD * sampleRate) / this.#hop);
    this.#rows = new Float32Array(this.#bands * 1024);
  }

  get #bands(): number {
    return this.#edges.length - 1;
  }

  /** Hears the next samples, −1 to 1, mono. */
  hear(samples: Float32Array): void {
    const size = this.#window.length;
    for (const sample of samples) {
      // A broken sample is silence: it must not spoil every frame after it.
      const value = Number.isFinite(sample) ? sample : 0;
      const loud = Math.abs(value);
      if (loud > this.#peak) this.#peak = loud;
      if (loud >= FULL_SCALE) this.#clipped += 1;
      this.#window[this.#filled] = value;
      this.#filled += 1;
      if (this.#filled === size) {
        this.#addFrame();
        this.#window.copyWithin(0, this.#hop);
        this.#filled = size - this.#hop;
      }
    }
    this.#samples += samples.length;
  }

  /**
   * What was heard so far, or the last part of it, as a page that listens asks for again and again. The same frames whatever
   * the blocks were that the sound came in.
   */
  heard({ last = LONGEST_HEARD }: { readonly last?: Second } = {}): SoundFrames {
    const bands = this.#bands;
    const size = this.#window.length;
    const step = this.#hop / this.sampleRate;
    const count = Math.min(this.#count, Math.max(0, Math.round(last / step)));
    const left = this.#count - count;
    return {
      start: ((this.#first + left) * this.#hop + size / 2) / this.sampleRate,
      step,
      bands,
      count,
      power: this.#rows.slice(left * bands, this.#count * bands),
      peak: this.#peak,
      clipped: this.#samples > 0 ? this.#clipped / this.#samples : 0,
      lasts: this.#samples / this.sampleRate,
    };
  }

  #addFrame(): void {
    this.#spectrum.of(this.#window, 0, this.#power);
    const bands = this.#bands;
    if (this.#count === this.#mostFrames) this.#dropTenth();
    if ((this.#count + 1) * bands > this.#rows.length) {
      const larger = new Float32Array(2 * this.#rows.length);
      larger.set(this.#rows);
      this.#rows = larger;
    }
    const row = this.#count * bands;
    for (let band = 0; band < bands; band++) {
      const [from, to] = [this.#edges[band] as number, this.#edges[band + 1] as number];
      let sum = 0;
      for (let k = from; k < to; k++) sum += this.#power[k] as number;
      this.#rows[row + band] = sum / (to - from);
    }
    this.#count += 1;
  }

  /** The oldest go, a tenth at a time, so that the rest is seldom moved. */
  #dropTenth(): void {
    const gone = Math.ceil(this.#mostFrames / 10);
    this.#rows.copyWithin(0, gone * this.#bands);
    this.#first += gone;
    this.#count -= gone;
  }
}

/** First bins of the bands, each band a bin at least. */
function bandEdges(size: number, sampleRate: Hertz): readonly number[] {
  const bin = sampleRate / size;
  const highest = Math.min(HIGHEST, 0.46 * sampleRate);
  const edges = [Math.max(1, Math.round(LOWEST / bin))];
  for (let band = 1; band <= MOST_BANDS; band++) {
    const edge = Math.round((LOWEST * (highest / LOWEST) ** (band / MOST_BANDS)) / bin);
    if (edge > (edges.at(-1) as number)) edges.push(edge);
  }
  return edges;
}
