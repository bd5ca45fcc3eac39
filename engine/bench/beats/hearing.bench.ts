/** Measures how well beats are heard in made recordings and prints the tables of docs/counting-beats.md. */
import { type MadeRecording, madeRecording } from './fixtures/made-recording.ts';
import { type Score, scoreOf } from './fixtures/score.ts';
import { beatsInSound } from './hear-beats.ts';

const RATES = [20, 40, 60, 90, 130, 180, 240, 300];
/** Judgement: a rate further off than this is wrong. */
const RIGHT_RATE = 0.02;
const [seeds = 2] = process.argv.slice(2).map(Number);

function row(name: string, of: Partial<MadeRecording>): void {
  for (const signalToNoise of [20, 6, 0, -6]) {
    const scores = RATES.flatMap((perMinute) =>
      Array.from({ length: seeds }, (_, seed): Score => {
        const lasts = Math.max(20, 900 / perMinute);
        const made = { beatFrequency: perMinute / 60, lasts, signalToNoise, seed: seed + 1, ...of };
        return scoreOf(madeRecording(made));
      }),
    );
    const heard = scores.filter(({ isHeard }) => isHeard);
    const right = heard.filter(({ rateError }) => Math.abs(rateError) < RIGHT_RATE);
    const errors = right.map(({ rateError }) => Math.abs(rateError)).sort((a, b) => a - b);
    const worst = errors.at(-1) ?? Number.NaN;
    const mean = (of: (score: Score) => number): number =>
      heard.reduce((sum, score) => sum + of(score), 0) / heard.length;
    const cells = [
      name,
      signalToNoise,
      `${heard.length} of ${scores.length}`,
      heard.length - right.length,
      `${(100 * worst).toFixed(2)} %`,
      `${(100 * mean(({ found }) => found)).toFixed(0)} %`,
      `${(100 * mean(({ right: share }) => share)).toFixed(0)} %`,
    ];
    console.log(`| ${cells.join(' | ')} |`);
  }
}

row('water', { noise: 'water' });
row('speech', { noise: 'speech' });
row('water and speech', { noise: 'both' });
row('water, periods spread 8 %', { noise: 'water', unevenness: 0.08 });
row('water, 15 % of beats missing', { noise: 'water', missing: 0.15 });
row('water, valve clicks twice a beat', { noise: 'water', recoil: 0.7 });
row('water, 10 % of beats double', { noise: 'water', doubled: 0.1 });
for (const noise of ['water', 'speech', 'both', 'music'] as const) {
  let invented = 0;
  for (let seed = 101; seed <= 120; seed++) {
    const made = madeRecording({ beatFrequency: 1, lasts: 30, noise, noBeats: true, seed });
    if (beatsInSound(made.samples, made.sampleRate).kind === 'heard') invented += 1;
  }
  console.log(`| ${noise}, no ram | ${invented} of 20 |`);
}
