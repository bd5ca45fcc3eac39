/** The worker that runs the cycle beside bench readings, and along the lifts of a test. It holds no state. */
import type { Installation, ReadingAnswer } from '@fallwright/engine';
import {
  answerReading,
  BENCH_RESOLUTION,
  beatAtHead,
  delivers,
  type OperatingPoint,
  operatingPoint,
} from '@fallwright/engine';
import type { AgainstCurve } from '@fallwright/papers';
import type { BenchSetting } from '@fallwright/records';
import { settingsOf, testFromData } from '@fallwright/records';
import { expose } from 'comlink';

/** A test with one reading, and the lifts along which its line is drawn. */
export interface CurveAsked {
  readonly test: string;
  readonly lifts: readonly number[];
}

function settingOf(text: string): BenchSetting {
  const read = testFromData(JSON.parse(text));
  const [setting] = read.ok ? settingsOf(read.test) : [];
  if (setting === undefined) throw new Error('this reading cannot be read');
  return setting;
}

const work = {
  answer(test: string): ReadingAnswer {
    return answerReading(settingOf(test));
  },

  /** Delivered along the lifts, and how much it moves with what the fall is good to. */
  curve({ test, lifts }: CurveAsked): AgainstCurve['points'] {
    const { reading, installation, head } = settingOf(test);
    const { value: fall, spread } = reading.fall;
    const runAt = (lift: number, fallHere: number): OperatingPoint => {
      const here: Installation = { ...installation, fall: fallHere, lift };
      return head === 'throughLine'
        ? operatingPoint(here, BENCH_RESOLUTION)
        : beatAtHead(here, lift, BENCH_RESOLUTION);
    };
    return lifts.flatMap((lift) => {
      const point = runAt(lift, fall);
      if (!delivers(point)) return [];
      const higher = runAt(lift, fall + spread);
      const moved = delivers(higher) ? Math.abs(higher.deliveryFlow - point.deliveryFlow) : 0;
      return [{ lift, delivered: point.deliveryFlow, spread: moved }];
    });
  },
};

export type BenchWork = typeof work;

expose(work);
