/**
 * Beats in sound, beside running water and speech.
 *
 * First look: how much power rises from frame to frame, summed over bands (spectral flux), each band measured against its
 * own background so that a loud rumble counts no more than a quiet click. Second look: the beats of the first are laid
 * over one another, and the whole is searched for that one sound. A valve makes the same sound each time; water and
 * speech do not.
 *
 * Sources: Bello and others (2005), IEEE Trans. Speech Audio Process. 13, 1035–1047, spectral flux; Stowell and Plumbley
 * (2007), Proc. ICMC, whitening by band; a matched filter for the second look (all memory).
 */
import { quantile } from '../../numerics/quantile.ts';
import type { Ratio, Second } from '../../quantities.ts';
import { type Onset, type OnsetStrength, onsetsIn } from './onsets.ts';
import { type Beat, FEWEST_BEATS, type Rhythm, rhythmOf } from './rhythm.ts';
import { type RowOfBeats, rowOfBeats } from './row-of-beats.ts';
import { SoundEar, type SoundFrames } from './sound-ear.ts';
import { STANDS_OUT, standsOut, usualPeriod } from './usual-period.ts';

export type BeatsHeard =
  | {
      readonly kind: 'heard';
      readonly beats: readonly Beat[];
      /** Clear sounds between the beats: recoils, doubles, knocks of another kind. */
      readonly others: readonly Beat[];
      readonly rhythm: Rhythm;
      /** Middle height of the beats over what lies between them, in its standard deviations. */
      readonly clearness: Ratio;
    }
  | {
      readonly kind: 'none';
      /** `silent`: nothing was recorded; `tooShort`: too few beats could be in it; `noBeat`: sounds, but none in step. */
      readonly why: 'silent' | 'tooShort' | 'noBeat';
    };

/** Judgement: 80 dB under full scale is a microphone that is off. */
const SILENT = 1e-4;
/** The background of a band is taken over stretches as long as this. */
const STRETCH: Second = 8;
/** A band is never measured against less than this share of its mean power: digital silence has no background. */
const FLOOR = 1e-6;
/**
 * Nor against less than 20 dB under its loudest half of a hundred: what is a hundred times weaker than the beats is no rival
 * to them, though it follow a pause.
 */
const LOUD_FLOOR = 0.01;
const LOUD_SHARE = 0.995;
/** Natural logarithm of power: more than this over the background counts no more, so that one bang is not all. */
const LOUDEST = 5;
/** The sound of a beat that is searched for, before and after its onset. */
const BEFORE: Second = 0.02;
const AFTER: Second = 0.05;
const LOOKS = 2;
/** Onsets that are tried as the sound of a beat, and rows that are followed to the end. Judgement. */
const EXAMPLES = 30;
const STARTS = 3;
/** Judgement, from recordings of speech and water without a ram: the factors by which the period must stand out of chance. */
const EVEN: Ratio = 0.05;
const STANDS_OUT_UNEVEN: Ratio = 1.8;
const NEAR_A_BEAT: Second = 0.04;
/** Judgement: under this the sound that is searched for stands no clearer than water does by chance. */
const LEAST_CLEAR: Ratio = 5;
/** Judgement: an uneven row must be clearer, since its step vouches for little. */
const CLEAR_FOR_UNEVEN: Ratio = 30;
/** Judgement: a mark less sure than this is shown beside the beats and not counted among them. */
const LEAST_SURE: Ratio = 0.35;
/** How near the peak of the flux lies to the beat: a frame or two. Judgement, measured on made recordings. */
export const SOUND_TIME_SPREAD: Second = 0.003;

/** Beats of a recording, from its samples. */
export function beatsInSound(samples: Float32Array, sampleRate: number): BeatsHeard {
  const ear = new SoundEar(sampleRate);
  ear.hear(samples);
  return beatsHeard(ear.heard());
}

export function beatsHeard(frames: SoundFrames): BeatsHeard {
  const { step, count, peak } = frames;
  if (!(peak > SILENT)) return { kind: 'none', why: 'silent' };
  const lasts = count * step;
  if (lasts < 1) return { kind: 'none', why: 'tooShort' };
  const white = whitened(frames);
  const row = clearestRow(white, lasts);
  if (!row || row.height < LEAST_CLEAR) {
    return { kind: 'none', why: 'noBeat' };
  }
  // A mark that is both faint and out of step is more likely another sound than a beat.
  const beats = row.beats.filter(({ confidence }) => confidence >= LEAST_SURE);
  const doubtful = row.beats.filter(({ confidence }) => confidence < LEAST_SURE);
  const rhythm = rhythmOf(
    beats.map(({ time }) => time),
    { timeSpread: SOUND_TIME_SPREAD },
  );
  if (!rhythm || (rhythm.isUneven && row.height < CLEAR_FOR_UNEVEN)) {
    return { kind: 'none', why: 'noBeat' };
  }
  const others = [...row.others, ...doubtful].sort((a, b) => a.time - b.time);
  return { kind: 'heard', beats, others, rhythm, clearness: row.height };
}

/**
 * The row of beats that is most in step, once the sound of its own beats has been searched for.
 *
 * Beside the rows of all onsets, rows of the onsets that are like one of them: where people talk near the ram, their
 * syllables outnumber the beats, but no two are as alike as two beats.
 */
function clearestRow(white: White, lasts: Second): RowOfBeats | undefined {
  const onsets = onsetsIn(flux(white));
  const starts = [onsets, ...alike(onsets, white)].flatMap((some) => {
    const usual = usualPeriod(some, lasts);
    return usual ? [{ onsets: some, ...usual }] : [];
  });
  let best:
    | { readonly row: RowOfBeats; readonly strength: Ratio; readonly period: Second }
    | undefined;
  for (const start of starts.sort((a, b) => b.strength - a.strength).slice(0, STARTS)) {
    let row = rowOfBeats(start.onsets, start.period);
    let { period } = start;
    let strength = 0;
    for (let look = 0; look < LOOKS; look++) {
      const sound = soundOf(row.beats, white);
      if (!sound) break;
      const found = onsetsIn(likeness(white, sound));
      const usual = usualPeriod(found, lasts);
      if (!usual) break;
      period = usual.period;
      row = rowOfBeats(found, period);
      const isLast = look === LOOKS - 1;
      strength = isLast && !standsOut(found, lasts, usual, factorFor(row)) ? 0 : usual.strength;
    }
    if (row.beats.length >= FEWEST_BEATS && strength > (best?.strength ?? 0))
      best = { row, strength, period };
  }
  return best && louderOf(best, onsets, white);
}

/**
 * A valve may click twice in each beat, as it shuts and as it falls open: two rows in step with one another. The louder one is
 * the beat.
 */
function louderOf(
  { row, period }: { readonly row: RowOfBeats; readonly period: Second },
  onsets: readonly Onset[],
  white: White,
): RowOfBeats {
  const rest = onsets.filter(({ time }) =>
    row.beats.every((beat) => Math.abs(beat.time - time) > NEAR_A_BEAT),
  );
  const other = rowOfBeats(rest, period);
  if (other.beats.length < Math.max(1, 0.8 * row.beats.length)) return row;
  if (loudness(other, white) <= loudness(row, white)) return row;
  const sound = soundOf(other.beats, white);
  return sound ? rowOfBeats(onsetsIn(likeness(white, sound)), period) : other;
}

/** Middle power of the beats, over all bands and three frames. */
function loudness({ beats }: RowOfBeats, { start, step, bands, count, power }: White): number {
  const sums = beats.map(({ time }) => {
    const from = Math.max(0, Math.min(count - 3, Math.round((time - start) / step)));
    let sum = 0;
    for (let i = from * bands; i < (from + 3) * bands; i++) sum += power[i] as number;
    return sum;
  });
  return quantile(sums, 0.5);
}

/** A row that is not even must stand out the more: of many onsets of speech some few are in step by and by. */
function factorFor({ beats }: RowOfBeats): Ratio {
  const times = beats.map(({ time }) => time);
  const spread = rhythmOf(times, { timeSpread: SOUND_TIME_SPREAD })?.periodSpread;
  return spread !== undefined && spread < EVEN ? STANDS_OUT : STANDS_OUT_UNEVEN;
}

/** For some of the strongest onsets, all onsets by their likeness to it. */
function alike(onsets: readonly Onset[], white: White): readonly (readonly Onset[])[] {
  const patches = onsets.flatMap((onset) => {
    const sound = soundOf([{ time: onset.time, confidence: 1 }], white, 1);
    return sound ? [{ onset, shape: sound.shape }] : [];
  });
  const strongest = [...patches].sort((a, b) => b.onset.height - a.onset.height);
  // Spread over the stronger half, since the very strongest may all be of another kind.
  const stride = Math.max(1, Math.floor(strongest.length / (2 * EXAMPLES)));
  const examples = strongest.filter((_, i) => i % stride === 0).slice(0, EXAMPLES);
  return examples.map((example) =>
    patches.flatMap(({ onset, shape }) => {
      let same = 0;
      for (let k = 0; k < shape.length; k++)
        same += (shape[k] as number) * (example.shape[k] as number);
      return same > 0.2 ? [{ time: onset.time, height: same }] : [];
    }),
  );
}

/** Logarithm of power over the background, in its own spread; frame after frame. */
interface White {
  readonly start: Second;
  readonly step: Second;
  readonly bands: number;
  readonly count: number;
  readonly level: Float32Array;
  /** As it was heard. */
  readonly power: Float32Array;
}

function whitened({ start, step, bands, count, power }: SoundFrames): White {
  const level = new Float32Array(count * bands);
  const stretch = Math.max(1, Math.round(STRETCH / step));
  const here = new Float64Array(count);
  for (let band = 0; band < bands; band++) {
    let sum = 0;
    for (let i = 0; i < count; i++) sum += power[i * bands + band] as number;
    const floor = Math.max(Number.MIN_VALUE, FLOOR * (sum / count));
    for (let i = 0; i < count; i++) here[i] = (power[i * bands + band] as number) + floor;
    const loud = LOUD_FLOOR * quantile(everyFourth(here), LOUD_SHARE);
    for (let from = 0; from < count; ) {
      const to = count - from < 1.5 * stretch ? count : from + stretch;
      const middle = Math.max(loud, quantile(everyFourth(here.subarray(from, to)), 0.5));
      for (let i = from; i < to; i++) {
        // Nought at the background itself; a dip under it counts little.
        level[i * bands + band] = Math.min(
          LOUDEST,
          Math.log((1 + (here[i] as number) / middle) / 2),
        );
      }
      from = to;
    }
  }
  return { start, step, bands, count, level, power };
}

/** Enough of a band for its quantiles, at a quarter of the sorting. */
function everyFourth(values: Float64Array): readonly number[] {
  return Array.from({ length: Math.ceil(values.length / 4) }, (_, i) => values[4 * i] as number);
}

/** How much the bands rise, from the mean of four frames to that of two that share no sample with them. */
function flux({ start, step, bands, count, level }: White): OnsetStrength {
  const values = new Float64Array(count);
  for (let i = 6; i < count - 1; i++) {
    let sum = 0;
    for (let band = 0; band < bands; band++) {
      const at = (frame: number): number => level[(i + frame) * bands + band] as number;
      const rise = (at(0) + at(1)) / 2 - (at(-3) + at(-4) + at(-5) + at(-6)) / 4;
      if (rise > 0) sum += rise;
    }
    values[i] = sum / bands;
  }
  return { start, step, values };
}

interface BeatSound {
  /** First frame of it, before the onset. */
  readonly first: number;
  readonly frames: number;
  /** Level less its mean by band, frame after frame; of unit length. */
  readonly shape: Float64Array;
}

/** The surer half of the beats laid over one another. */
function soundOf(beats: readonly Beat[], white: White, fewest = 2): BeatSound | undefined {
  const { start, step, bands, count, level } = white;
  if (beats.length < fewest) return undefined;
  const first = -Math.round(BEFORE / step);
  const frames = Math.round(AFTER / step) - first + 1;
  const sure = quantile(
    beats.map(({ confidence }) => confidence),
    0.5,
  );
  const shape = new Float64Array(frames * bands);
  let used = 0;
  for (const { time, confidence } of beats) {
    const from = Math.round((time - start) / step) + first;
    if (confidence < sure || from < 0 || from + frames > count) continue;
    for (let i = 0; i < shape.length; i++) {
      shape[i] = (shape[i] as number) + (level[from * bands + i] as number);
    }
    used += 1;
  }
  if (used < fewest) return undefined;
  // A sound that is louder all through is no onset: what counts is how each band changes.
  for (let band = 0; band < bands; band++) {
    let mean = 0;
    for (let f = 0; f < frames; f++) mean += (shape[f * bands + band] as number) / frames;
    for (let f = 0; f < frames; f++)
      shape[f * bands + band] = (shape[f * bands + band] as number) - mean;
  }
  const length = Math.hypot(...shape);
  return length > 0 ? { first, frames, shape: shape.map((value) => value / length) } : undefined;
}

/** How like the sound of a beat each place is. */
function likeness({ start, step, bands, count, level }: White, sound: BeatSound): OnsetStrength {
  const { first, frames, shape } = sound;
  const values = new Float64Array(count);
  for (let i = -first; i + first + frames <= count; i++) {
    const from = (i + first) * bands;
    let sum = 0;
    for (let k = 0; k < shape.length; k++)
      sum += (shape[k] as number) * (level[from + k] as number);
    values[i] = sum;
  }
  return { start, step, values };
}
