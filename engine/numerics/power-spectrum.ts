/**
 * Power of a frame of samples by frequency.
 *
 * A radix-2 transform in place on buffers that are kept from frame to frame, under a Hann window. A class, because it
 * owns those buffers in a hot loop.
 *
 * Source: Cooley and Tukey (1965), Math. Comput. 19, 297–301, decimation in time (memory).
 */
export class PowerSpectrum {
  readonly size: number;
  readonly #real: Float64Array;
  readonly #imaginary: Float64Array;
  readonly #cosines: Float64Array;
  readonly #sines: Float64Array;
  readonly #reversed: Uint32Array;
  readonly #window: Float64Array;

  /** @throws RangeError when `size` is not a power of two of at least 4. */
  constructor(size: number) {
    if (!(Number.isInteger(Math.log2(size)) && size >= 4)) {
      throw new RangeError(`size must be a power of two of at least 4, got ${size}`);
    }
    this.size = size;
    this.#real = new Float64Array(size);
    this.#imaginary = new Float64Array(size);
    this.#cosines = Float64Array.from({ length: size / 2 }, (_, k) =>
      Math.cos((2 * Math.PI * k) / size),
    );
    this.#sines = Float64Array.from({ length: size / 2 }, (_, k) =>
      Math.sin((2 * Math.PI * k) / size),
    );
    this.#window = Float64Array.from(
      { length: size },
      (_, k) => 0.5 - 0.5 * Math.cos((2 * Math.PI * k) / size),
    );
    this.#reversed = new Uint32Array(size);
    for (let i = 1; i < size; i++) {
      this.#reversed[i] = ((this.#reversed[i >> 1] ?? 0) >> 1) | (i & 1 ? size / 2 : 0);
    }
  }

  /** Squared amplitude from frequency nought to half the sampling rate, `size/2 + 1` numbers, into `power`. */
  of(samples: ArrayLike<number>, from: number, power: Float64Array): void {
    const { size } = this;
    const [real, imaginary] = [this.#real, this.#imaginary];
    for (let i = 0; i < size; i++) {
      const place = this.#reversed[i] as number;
      real[place] = (samples[from + i] as number) * (this.#window[i] as number);
    }
    imaginary.fill(0);
    for (let half = 1; half < size; half *= 2) {
      const stride = size / (2 * half);
      for (let start = 0; start < size; start += 2 * half) {
        for (let k = 0; k < half; k++) {
          const c = this.#cosines[k * stride] as number;
          const s = this.#sines[k * stride] as number;
          const low = start + k;
          const high = low + half;
          const re = (real[high] as number) * c + (imaginary[high] as number) * s;
          const im = (imaginary[high] as number) * c - (real[high] as number) * s;
          real[high] = (real[low] as number) - re;
          imaginary[high] = (imaginary[low] as number) - im;
          real[low] = (real[low] as number) + re;
          imaginary[low] = (imaginary[low] as number) + im;
        }
      }
    }
    for (let k = 0; k <= size / 2; k++) {
      power[k] = (real[k] as number) ** 2 + (imaginary[k] as number) ** 2;
    }
  }
}
