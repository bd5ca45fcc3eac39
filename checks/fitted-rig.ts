/**
 * The laboratory ram of 2019 fitted to its steady flow and to one cycling run, AC19-F and AC19-R1, as a maker would fit a ram to the
 * bench tests of a day. What it then says of the other runs is a prediction: they are at another spring and other heads.
 *
 * Spreads are those of the rows' notes: flow by the pump's nominal tube ±10 %, beats counted in a log, heads by a gauge. The peak is a lower
 * bound, sampled every 2 to 6 ms, and so is good to a third (judgement).
 */
import {
  beatAtHead,
  fitRam,
  type OperatingPoint,
  type RamFit,
  withFitFactors,
} from '@fallwright/engine';
import { fromLitresPerMinute, toMetresOfWater } from '@fallwright/units';
import { RIG_OF_2019, RIG_RESOLUTION, type RigSetting, rigAt, SOFT_SPRING } from './rigs.ts';

function read(value: number, share: number) {
  return { value, spread: share * value, count: 1, range: 0 };
}

let fit: RamFit | undefined;

/** Source: rows AC19-F and AC19-R1. */
export function fittedRig(): RamFit {
  fit ??= fitRam(
    [
      {
        installation: rigAt(RIG_OF_2019, { ...SOFT_SPRING, vesselHead: 6.07 }),
        head: 'atVessel',
        reading: {
          fall: read(2.06, 0.005),
          lift: read(6.07, 0.01),
          beatFrequency: read(229 / 60, 0.02),
          deliveryFlow: read(fromLitresPerMinute(1.92), 0.1),
          peakHead: read(toMetresOfWater(259e3), 0.3),
          heldOpenFlow: read(fromLitresPerMinute(59.8), 0.01),
        },
      },
    ],
    { resolution: { ...RIG_RESOLUTION, block: 8 } },
  );
  return fit;
}

/** The fitted rig at another setting. @throws Error when the fit did not converge. */
export function fittedPoint(setting: RigSetting): OperatingPoint {
  const found = fittedRig();
  if (found.kind === 'notFitted') throw new Error(`the rig could not be fitted: ${found.why}`);
  const rig = withFitFactors(rigAt(RIG_OF_2019, setting), found.factors);
  return beatAtHead(rig, setting.vesselHead, RIG_RESOLUTION);
}
