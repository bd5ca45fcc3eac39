/** Takes what the microphone brings and hands it on in blocks. Runs in the thread of the sound, so it does nothing else. */
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, of: new () => AudioWorkletProcessor): void;

/** Judgement: a twelfth of a second at 48 kHz; fewer messages than that are heard late, more wake the page too often. */
const BLOCK = 4096;

class BlockGatherer extends AudioWorkletProcessor {
  #block = new Float32Array(BLOCK);
  #filled = 0;

  process(inputs: readonly (readonly Float32Array[])[]): boolean {
    const [samples] = inputs[0] ?? [];
    for (const sample of samples ?? []) {
      this.#block[this.#filled] = sample;
      this.#filled += 1;
      if (this.#filled === BLOCK) {
        const full = this.#block;
        this.#block = new Float32Array(BLOCK);
        this.#filled = 0;
        this.port.postMessage(full, [full.buffer]);
      }
    }
    return true;
  }
}

registerProcessor('block-gatherer', BlockGatherer);
