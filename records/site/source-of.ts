/** The source as the engine takes it, and the loss at the mouth of the drive line. */
import { FITTINGS, type Source, SURFACE_COEFFICIENT } from '@fallwright/engine';
import type { Assumptions } from './assumption.ts';
import { hasUsualCoefficient, supplyOf } from './gauging-of.ts';
import type { SourceForm } from './source-fields.ts';

type Store = NonNullable<SourceForm['store']>;
type Intake = NonNullable<SourceForm['intake']>;

/** Judgement: how deep the intake lies in each kind of store when nobody says. */
const USUAL_DEPTH: Readonly<Record<Store, number>> = {
  bucket: 0.3,
  tank: 1,
  'spring box': 0.5,
  pool: 0.5,
};

/** The velocity head itself, which the water takes from the source. */
const VELOCITY_HEAD = 1;
const INTAKE_LOSS: Readonly<Record<Intake, number>> = {
  'open end': FITTINGS['entrance, pipe projecting inward'].value,
  'sharp edge': FITTINGS['entrance, sharp edge'].value,
  'bell mouth': FITTINGS['entrance, bell mouth'].value,
  strainer: FITTINGS['entrance, sharp edge'].value + FITTINGS['strainer, clean'].value,
  'foot valve':
    FITTINGS['entrance, sharp edge'].value +
    FITTINGS['foot valve with strainer, hinged disc'].value,
};

export function sourceOf(source: SourceForm, assumptions: Assumptions): Source {
  noteUsualCoefficient(source, assumptions);
  const supply = supplyOf(source).flow;
  if (source.store === undefined) {
    return {
      kind: 'steady',
      ...(supply !== undefined && { yield: supply }),
    };
  }
  const { surfaceArea, depthOverIntake } = storeShape(source, source.store, assumptions);
  const inflow =
    supply ??
    assumptions.quantity('source.inflow', `inflow of the ${source.store}`, 0, 'sourceFlow', {
      why: 'none was given',
      basis: 'judgement',
    });
  return { kind: 'store', surfaceArea, depthOverIntake, inflow };
}

function noteUsualCoefficient(source: SourceForm, assumptions: Assumptions): void {
  if (!source.gauging?.some(hasUsualCoefficient)) return;
  const { value, spread } = SURFACE_COEFFICIENT;
  assumptions.words('source.gauging', 'coefficient of the floats', `${value} ± ${spread}`, {
    why: 'none was given, and others print 0.66 to 0.9',
    basis: 'commonPractice',
  });
}

function storeShape(source: SourceForm, store: Store, assumptions: Assumptions) {
  const { volume, area, depth } = source;
  if (volume && area && !depth) {
    return { surfaceArea: area.value, depthOverIntake: volume.value / area.value };
  }
  const depthOverIntake =
    depth?.value ??
    assumptions.quantity('source.depth', 'depth over the intake', USUAL_DEPTH[store], 'depth', {
      why: `usual in a ${store}`,
      basis: 'judgement',
    });
  const surfaceArea = area?.value ?? (volume ? volume.value / depthOverIntake : undefined);
  if (surfaceArea === undefined) {
    throw new RangeError('a store needs a volume or an area: read the site with readSite first');
  }
  return { surfaceArea, depthOverIntake };
}

/** Loss coefficient of strainer, entrance and velocity head together. */
export function entranceLossOf(source: SourceForm, assumptions: Assumptions): number {
  if (source.intake) return INTAKE_LOSS[source.intake] + VELOCITY_HEAD;
  assumptions.words('source.intake', 'intake', 'a pipe with a clean strainer', {
    why: 'a drive line without one soon stops',
    basis: 'commonPractice',
  });
  return INTAKE_LOSS.strainer + VELOCITY_HEAD;
}
