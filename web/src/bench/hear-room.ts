/** Where beats are counted: a worker of its own, so that an hour of sound does not hold up a thumb. */
import type { System } from '@fallwright/units';
import { transfer } from 'comlink';
import { room } from '../answer/worker-room.ts';
import type { Counted, HearWork } from './hear-worker.ts';
import workletUrl from './hear-worklet.ts?worker&url';
import { kindOfFile } from './heard-view.ts';

type Outcome = Counted['outcome'];

export interface HearRoom {
  /** Counts the beats of a recording or a log. */
  readonly file: (
    file: File,
    asked: { readonly system: System; readonly column?: string | undefined },
  ) => Promise<Outcome>;
  /** Listens until it is stopped. */
  readonly listen: () => Promise<Listening>;
  readonly close: () => void;
}

export interface Listening {
  readonly heard: () => Promise<Outcome>;
  readonly stop: () => void;
}

/** Judgement: as the reader of WAV; what is longer holds more than a test. */
const LARGEST_FILE = 400 * 1024 * 1024;

export function openHearRoom(): HearRoom {
  const { ask, end } = room<HearWork>(
    () => new Worker(new URL('./hear-worker.ts', import.meta.url), { type: 'module' }),
  );
  let listening: Listening | undefined;

  const file: HearRoom['file'] = async (chosen, { system, column }) => {
    if (chosen.size > LARGEST_FILE) {
      return refusal(
        `${chosen.name} is larger than ${LARGEST_FILE / 1024 / 1024} MB. Cut out the minute or two that matter.`,
      );
    }
    if (chosen.size === 0) return refusal(`${chosen.name} is empty. Choose another file.`);
    const kind = kindOfFile(chosen.name, new Uint8Array(await chosen.slice(0, 512).arrayBuffer()));
    if (kind === 'log') {
      const text = await chosen.text();
      return (await ask((work) => work.log(text, system, column))).outcome;
    }
    const bytes = await chosen.arrayBuffer();
    if (kind === 'wav') {
      return (await ask((work) => work.wav(transfer(bytes, [bytes])))).outcome;
    }
    const sound = await decoded(bytes);
    if (sound === undefined) {
      return refusal(
        `This browser cannot read the sound in ${chosen.name}. Save it as WAV (PCM, 16 bits).`,
      );
    }
    const { samples, sampleRate } = sound;
    return (await ask((work) => work.samples(transfer(samples, [samples.buffer]), sampleRate)))
      .outcome;
  };

  return {
    file,
    listen: async () => {
      listening?.stop();
      listening = await listenTo({
        begin: (rate) => ask((work) => work.begin(rate)),
        hear: (block) => void ask((work) => work.hear(transfer(block, [block.buffer]))),
        heard: async () => (await ask((work) => work.heard())).outcome,
      });
      return listening;
    },
    close: () => {
      listening?.stop();
      end();
    },
  };
}

const refusal = (reason: string): Outcome => ({ kind: 'refused', reasons: [reason] });

/** Whatever this browser can play, as one channel. */
async function decoded(
  bytes: ArrayBuffer,
): Promise<
  { readonly samples: Float32Array<ArrayBuffer>; readonly sampleRate: number } | undefined
> {
  const context = new OfflineAudioContext(1, 1, 44_100);
  let sound: AudioBuffer;
  try {
    sound = await context.decodeAudioData(bytes);
  } catch {
    return undefined;
  }
  const samples = new Float32Array(sound.length);
  for (let channel = 0; channel < sound.numberOfChannels; channel++) {
    for (const [i, sample] of sound.getChannelData(channel).entries()) {
      samples[i] = (samples[i] ?? 0) + sample / sound.numberOfChannels;
    }
  }
  return { samples, sampleRate: sound.sampleRate };
}

async function listenTo({
  begin,
  hear,
  heard,
}: {
  readonly begin: (sampleRate: number) => Promise<void>;
  readonly hear: (block: Float32Array<ArrayBuffer>) => void;
  readonly heard: () => Promise<Outcome>;
}): Promise<Listening> {
  if (navigator.mediaDevices === undefined) {
    throw new Error(
      'this browser lets only pages over https, or from its own machine, use the microphone. Record with another app and open the recording here',
    );
  }
  // What makes speech clear would take the beats out.
  const stream = await navigator.mediaDevices.getUserMedia({
    audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false },
  });
  const context = new AudioContext();
  const stop = (): void => {
    for (const track of stream.getTracks()) track.stop();
    if (context.state !== 'closed') void context.close();
  };
  try {
    await context.audioWorklet.addModule(workletUrl);
    await begin(context.sampleRate);
    const gatherer = new AudioWorkletNode(context, 'block-gatherer', {
      channelCount: 1,
      channelCountMode: 'explicit',
    });
    gatherer.port.onmessage = ({ data }: MessageEvent<Float32Array<ArrayBuffer>>) => hear(data);
    // Only what leads to the loudspeaker is run; nothing of it is heard there.
    const silence = new GainNode(context, { gain: 0 });
    new MediaStreamAudioSourceNode(context, { mediaStream: stream })
      .connect(gatherer)
      .connect(silence)
      .connect(context.destination);
    await context.resume();
  } catch (error) {
    stop();
    throw error;
  }
  return { heard, stop };
}
