/**
 * The cautions that matter at this place. Common practice unless a source stands beside the sentence; they never
 * replace the local code, the permit or the licensed person.
 */
import { type Answer, type Installation, MATERIALS } from '@fallwright/engine';
import { installationOf, type Site } from '@fallwright/records';
import { partInWords } from './pressures.ts';

export function cautions(answer: Answer, site: Site): readonly string[] {
  const { installation } = installationOf(site);
  return [
    'This is a prediction, not a promise. Local codes and licensed practice come first.',
    ...pressureCautions(answer),
    'Each beat is a shock. Keep fingers out of the waste valve, and never hold or plug it while water runs: it closes with the force of the whole pipe.',
    'Let the pressure off both sides before undoing anything, and anchor ram and drive pipe.',
    ...materialCautions(installation),
    ...vesselCautions(answer),
    ...placeCautions(site),
    ...frostCautions(site),
    ...liftingCautions(installation),
    'A ram does not clean water. Treat surface water before drinking, test springs, and never join the line to a public main without an approved air gap.',
  ];
}

function pressureCautions({ pressureCheck }: Answer): readonly string[] {
  if (!pressureCheck) return [];
  const over = pressureCheck.rows.filter(({ outcome }) => outcome === 'over');
  const unrated = pressureCheck.rows.filter(({ outcome }) => outcome === 'noRating');
  return [
    ...over.map(
      ({ part }) =>
        `The blow goes over the rating of ${partInWords(part)}. Do not build it so: take a stronger part, or a lower fall.`,
    ),
    ...(unrated.length > 0
      ? [
          `No rating is known for ${unrated.map(({ part }) => partInWords(part)).join(', ')}. Read it on the part and put it into the file.`,
        ]
      : []),
    ...(pressureCheck.hasCavity
      ? [
          'The pressure falls to where cold water boils: a cavity opens and closes with a blow, and a soft hose may flatten.',
        ]
      : []),
  ];
}

function materialCautions({ driveLine }: Installation): readonly string[] {
  const plastic = driveLine.segments.find(({ pipe }) =>
    /^(pe|ldpe|pvc|rubber)/.test(pipe.material),
  );
  if (!plastic) return [];
  const { displayName } = MATERIALS[plastic.pipe.material];
  return [
    `Drive pipe of ${displayName} tires under the beat and may crack without warning; sun ages it too. Cover it and look at it often.`,
  ];
}

function vesselCautions({ operatingPoint }: Answer): readonly string[] {
  if (!operatingPoint) return [];
  return [
    'Shield a home-made air vessel and never stand over it; never charge it from a compressor without a relief valve and a rated shell.',
  ];
}

function placeCautions({ source }: Site): readonly string[] {
  const isOpenWater =
    source.store === undefined || source.store === 'pool' || source.store === 'spring box';
  if (!isOpenWater) return [];
  return [
    'Taking water, damming and returning waste water may need a permit. Ask first, leave the stream its share, screen the intake for fish.',
    'Work near water: floods, slippery banks, cold; not alone.',
  ];
}

/** Judgement: water below 8 °C or a place above 500 m sees frost; a file that says neither may. */
function frostCautions({ temperature, altitude }: Site): readonly string[] {
  const isWarm = temperature !== undefined && temperature.value > 15;
  const isHigh = altitude !== undefined && altitude.value > 500;
  const isCold = temperature === undefined || temperature.value < 8;
  if (isWarm || !(isHigh || isCold)) return [];
  return ['Where it freezes, bury or drain both lines and keep ice off the waste outlet.'];
}

/** Judgement: rams from 40 mm bore, and steel pipe from 32 mm, are beyond one person on a bank. */
function liftingCautions({ ram, driveLine }: Installation): readonly string[] {
  const isHeavyPipe = driveLine.segments.some(
    ({ pipe }) => /steel|castIron/i.test(pipe.material) && pipe.innerDiameter > 0.032,
  );
  if (ram.bore < 0.04 && !isHeavyPipe) return [];
  return [
    'Ram and steel pipe are heavy and banks are steep: two people, slings, no lifting over water alone.',
  ];
}
